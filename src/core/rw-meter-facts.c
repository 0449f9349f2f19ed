/* rw-meter-facts.c: the uncertainty that follows from a meter's specification.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-facts.h"

#include <math.h>

static const double sqrt_3 = 1.7320508075688772;
static const double sqrt_12 = 3.4641016151377544;

RwMeterFacts *
rw_meter_facts_new (const char *id,
                    const char *name,
                    double      percent,
                    double      counts)
{
  RwMeterFacts *self = g_new0 (RwMeterFacts, 1);

  self->id = g_strdup (id);
  self->name = g_strdup (name != NULL ? name : "");
  self->percent = percent;
  self->counts = counts;
  return self;
}

RwMeterFacts *
rw_meter_facts_copy (const RwMeterFacts *self)
{
  RwMeterFacts *copy = rw_meter_facts_new (self->id, self->name, self->percent, self->counts);

  copy->ac = self->ac;
  return copy;
}

void
rw_meter_facts_free (RwMeterFacts *self)
{
  if (self == NULL)
    return;
  g_free (self->id);
  g_free (self->name);
  g_free (self);
}

static double
half_width_own (const RwMeterFacts *facts,
                const RwReading    *reading)
{
  return facts != NULL ? facts->counts * reading->step : 0.0;
}

static double
half_width_common (const RwMeterFacts *facts,
                   const RwReading    *reading)
{
  return facts != NULL ? facts->percent / 100.0 * fabs (reading->value) : 0.0;
}

double
rw_meter_facts_u_total (const RwMeterFacts *facts,
                        const RwReading    *reading)
{
  if (reading->over || isnan (reading->value))
    return NAN;
  if (!isnan (reading->u))
    return reading->u;

  const double a = half_width_own (facts, reading) + half_width_common (facts, reading);

  return MAX (a / sqrt_3, reading->step / sqrt_12);
}

double
rw_meter_facts_u_own (const RwMeterFacts *facts,
                      const RwReading    *reading)
{
  if (reading->over || isnan (reading->value))
    return NAN;
  if (!isnan (reading->u))
    return reading->u;
  return MAX (half_width_own (facts, reading) / sqrt_3, reading->step / sqrt_12);
}

double
rw_meter_facts_u_common (const RwMeterFacts *facts,
                         const RwReading    *reading)
{
  if (reading->over || isnan (reading->value))
    return NAN;
  return isnan (reading->u) ? half_width_common (facts, reading) / sqrt_3 : 0.0;
}

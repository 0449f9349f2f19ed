/* rw-event-scan.c: samples and readings in our own writing, read fast.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"n":N,"t":T,"sample":{"rail":"…","place":"…","kind":"…","value":V[,"step":S][,"meter":"…"]}}
 *
 * or "reading" in place of "sample"; no spaces, this order, plain decimal numbers. Anything else is left
 * to the JSON parser.
 */
#include "config.h"

#include "rw-event-scan.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *at;
  const char *end;
} Scan;

static gboolean
scan_word (Scan       *scan,
           const char *word)
{
  const gsize length = strlen (word);

  if ((gsize) (scan->end - scan->at) < length || memcmp (scan->at, word, length) != 0)
    return FALSE;
  scan->at += length;
  return TRUE;
}

/* An id of a–z, 0–9 and - between quotes, at most 31 long. */
static gboolean
scan_id (Scan *scan,
         char  id[32])
{
  guint n = 0;

  if (!scan_word (scan, "\""))
    return FALSE;
  while (scan->at < scan->end && n < 31 && (g_ascii_isalnum (*scan->at) || *scan->at == '-'))
    id[n++] = *scan->at++;
  id[n] = '\0';
  return n > 0 && scan_word (scan, "\"");
}

/* A plain decimal number: sign, at most 15 digits in all, a point; no exponent. Exact, since both the
 * digits and the power of ten are whole numbers that a double holds (one rounding, as strtod). */
static gboolean
scan_number (Scan   *scan,
             double *out)
{
  static const double tens[] = { 1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15 };
  const gboolean negative = scan_word (scan, "-");
  guint64 digits = 0;
  guint n = 0, decimals = 0;
  gboolean point = FALSE;
  const char *first = scan->at;

  for (; scan->at < scan->end; scan->at++)
    {
      if (*scan->at == '.' && !point && n > 0)
        point = TRUE;
      else if (g_ascii_isdigit (*scan->at) && n < 15)
        {
          digits = digits * 10 + (guint64) (*scan->at - '0');
          n++;
          decimals += point;
        }
      else
        break;
    }
  if (n == 0 || (point && decimals == 0) || (*first == '0' && n - decimals > 1))
    return FALSE;
  if (scan->at == scan->end || (*scan->at != ',' && *scan->at != '}'))
    return FALSE;
  *out = (double) digits / tens[decimals];
  if (negative)
    *out = -*out;
  return TRUE;
}

/* Interning takes a lock and a hash; the last ids seen are nearly always the next ones. */
static const char *
intern_cached (const char *id)
{
  static __thread const char *seen[4];
  static __thread guint next;

  for (guint i = 0; i < G_N_ELEMENTS (seen); i++)
    if (seen[i] != NULL && strcmp (seen[i], id) == 0)
      return seen[i];
  return seen[next++ % G_N_ELEMENTS (seen)] = g_intern_string (id);
}

static gboolean
scan_reading (Scan      *scan,
              RwReading *reading)
{
  char rail[32], place[32], kind[32], meter[32];

  *reading = (RwReading){ .u = NAN };
  if (!scan_word (scan, "{\"rail\":") || !scan_id (scan, rail)
      || !scan_word (scan, ",\"place\":") || !scan_id (scan, place)
      || !scan_word (scan, ",\"kind\":") || !scan_id (scan, kind)
      || !scan_word (scan, ",\"value\":") || !scan_number (scan, &reading->value))
    return FALSE;
  if (scan_word (scan, ",\"step\":") && !scan_number (scan, &reading->step))
    return FALSE;
  if (scan_word (scan, ",\"meter\":"))
    {
      if (!scan_id (scan, meter))
        return FALSE;
      reading->meter = intern_cached (meter);
    }
  if (!scan_word (scan, "}}") || scan->at != scan->end)
    return FALSE;
  reading->rail = intern_cached (rail);
  return reading->step >= 0 && rw_place_from_id (place, &reading->place)
         && rw_kind_from_id (kind, &reading->kind);
}

gboolean
rw_event_scan (const char *line,
               gsize       length,
               RwEvent    *event)
{
  Scan scan = { line, line + length };
  double n;

  if (!scan_word (&scan, "{\"n\":") || !scan_number (&scan, &n) || n < 1 || n > 4e9 || n != floor (n)
      || !scan_word (&scan, ",\"t\":") || !scan_number (&scan, &event->t) || event->t < 0
      || event->t > RW_EVENT_MAX_SECONDS)
    return FALSE;
  event->n = (guint) n;
  event->line = NULL;
  if (scan_word (&scan, ",\"sample\":"))
    event->type = RW_EVENT_SAMPLE;
  else if (scan_word (&scan, ",\"reading\":"))
    event->type = RW_EVENT_READING;
  else
    return FALSE;
  return scan_reading (&scan, &event->reading);
}

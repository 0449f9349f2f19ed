/* test-low-bin.c: how much height is asked for something that can scroll.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-low-bin.h"

static void
test_bound (void)
{
  for (int child_least = 0; child_least < 200; child_least += 7)
    for (int child_wanted = child_least; child_wanted < 300; child_wanted += 11)
      for (int least = 10; least < 150; least += 20)
        for (int most = 0; most < 250; most += 50)
          {
            int minimum, natural;

            rw_low_bin_bound (child_least, child_wanted, least, most, &minimum, &natural);
            g_assert_cmpint (minimum, >=, 0);
            g_assert_cmpint (minimum, <=, least);         /* it never pushes others out */
            g_assert_cmpint (minimum, <=, child_least);   /* and takes no more than there is to show */
            g_assert_cmpint (natural, >=, minimum);
            g_assert_cmpint (natural, <=, child_wanted);
            if (most == 0)
              g_assert_cmpint (natural, ==, child_wanted);
            else
              g_assert_cmpint (natural, <=, MAX (most, least));
            if (child_wanted <= least) /* what is small is never scrolled */
              {
                g_assert_cmpint (minimum, ==, child_least);
                g_assert_cmpint (natural, ==, child_wanted);
              }
          }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/low-bin/asks for what its child wants and does with less", test_bound);
  return g_test_run ();
}

/* test-meter-book.c: the meters of a bench, remembered.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "rw-meter-book.h"

typedef struct
{
  char *folder;
  char *path;
} Place;

static void
set_up (Place        *place,
        gconstpointer data)
{
  place->folder = g_dir_make_tmp ("railwright-book-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "below", "meters.json", NULL);
}

static void
tear_down (Place        *place,
           gconstpointer data)
{
  g_autofree char *below = g_path_get_dirname (place->path);
  GDir *dir = g_dir_open (below, 0, NULL);
  const char *name;

  g_chmod (below, 0700);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (below, name, NULL);

      g_unlink (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (below);
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

static void
write_text (const Place *place,
            const char  *text)
{
  g_autofree char *below = g_path_get_dirname (place->path);

  g_mkdir_with_parents (below, 0700);
  g_assert_true (g_file_set_contents (place->path, text, -1, NULL));
}

static RwMeterBook *
open_book (const Place *place)
{
  g_autoptr (GError) error = NULL;
  RwMeterBook *book = rw_meter_book_new (place->path, &error);

  g_assert_no_error (error);
  return book;
}

static RwKnownMeter *
make_meter (const char *id)
{
  static const RwSerialSettings line
      = { .baud = 19200, .bits = 7, .parity = RW_PARITY_ODD, .stop_bits = 1, .dtr = TRUE, .rts = FALSE };
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new (id, "green meter, “second”", 0.09, 2);
  RwKnownMeter *meter = rw_known_meter_new (facts);

  meter->facts->ac = RW_METER_AC_TRUE_RMS;
  meter->address = rw_meter_address_new_serial ("/dev/ttyUSB0", &line);
  meter->format = g_strdup ("digits-14");
  meter->rail = g_strdup ("p5");
  return meter;
}

static void
check_same (const RwKnownMeter *a,
            const RwKnownMeter *b)
{
  g_assert_nonnull (a);
  g_assert_nonnull (b);
  g_assert_cmpstr (a->facts->id, ==, b->facts->id);
  g_assert_cmpstr (a->facts->name, ==, b->facts->name);
  g_assert_cmpfloat (a->facts->percent, ==, b->facts->percent);
  g_assert_cmpfloat (a->facts->counts, ==, b->facts->counts);
  g_assert_cmpint (a->facts->ac, ==, b->facts->ac);
  g_assert_cmpint (a->address == NULL, ==, b->address == NULL);
  if (a->address != NULL)
    g_assert_true (rw_meter_address_equal (a->address, b->address));
  g_assert_cmpstr (a->format, ==, b->format);
  g_assert_cmpstr (a->pattern, ==, b->pattern);
  g_assert_cmpint (a->mark, ==, b->mark);
  g_assert_cmpstr (a->identity, ==, b->identity);
  g_assert_cmpstr (a->rail, ==, b->rail);
}

/* --- round trips --------------------------------------------------------------------- */

static void
test_round_trip (Place        *place,
                 gconstpointer data)
{
  g_autoptr (RwMeterBook) book = open_book (place);
  g_autoptr (RwKnownMeter) serial = make_meter ("m2");
  g_autoptr (RwKnownMeter) tcp = make_meter ("m3");
  g_autoptr (RwKnownMeter) eye = make_meter ("m1");
  g_autoptr (GError) error = NULL;

  rw_meter_address_free (tcp->address);
  tcp->address = rw_meter_address_new_tcp ("bench-box", 5025);
  tcp->pattern = g_strdup ("V={number}");
  tcp->identity = g_strdup ("Quayside M3");
  tcp->mark = ',';
  g_clear_pointer (&tcp->rail, g_free);
  g_clear_pointer (&eye->address, rw_meter_address_free);
  g_clear_pointer (&eye->format, g_free);
  eye->facts->ac = RW_METER_AC_UNKNOWN;
  g_assert_true (rw_meter_book_put (book, serial, &error));
  g_assert_true (rw_meter_book_put (book, tcp, &error));
  g_assert_true (rw_meter_book_put (book, eye, &error));
  g_assert_no_error (error);

  g_autoptr (RwMeterBook) again = open_book (place);

  g_assert_cmpuint (rw_meter_book_get_n (again), ==, 3);
  check_same (rw_meter_book_get (again, 0), serial);
  check_same (rw_meter_book_find (again, "m3"), tcp);
  check_same (rw_meter_book_find (again, "m1"), eye);
  check_same (rw_meter_book_find_address (again, tcp->address), tcp);
  g_assert_null (rw_meter_book_find (again, "m9"));
}

static void
test_replace_and_remove (Place        *place,
                         gconstpointer data)
{
  g_autoptr (RwMeterBook) book = open_book (place);
  g_autoptr (RwKnownMeter) meter = make_meter ("m2");
  g_autofree char *first = rw_meter_book_make_id (book);
  g_autofree char *second = NULL;

  g_assert_cmpstr (first, ==, "m2");
  g_assert_true (rw_meter_book_put (book, meter, NULL));
  second = rw_meter_book_make_id (book);
  g_assert_cmpstr (second, ==, "m3");
  meter->facts->percent = 0.7;
  g_clear_pointer (&meter->rail, g_free);
  g_assert_true (rw_meter_book_put (book, meter, NULL));
  g_assert_cmpuint (rw_meter_book_get_n (book), ==, 1);
  /* The book's own is put again. */
  g_assert_true (rw_meter_book_put (book, rw_meter_book_get (book, 0), NULL));

  g_autoptr (RwMeterBook) again = open_book (place);

  check_same (rw_meter_book_get (again, 0), meter);
  g_assert_true (rw_meter_book_remove (again, rw_meter_book_get (again, 0)->facts->id, NULL));
  g_assert_cmpuint (rw_meter_book_get_n (again), ==, 0);
  g_assert_true (rw_meter_book_remove (again, "m2", NULL));

  g_autoptr (RwMeterBook) empty = open_book (place);

  g_assert_cmpuint (rw_meter_book_get_n (empty), ==, 0);
}

/* Two windows with the same file. */
static void
test_two_books (Place        *place,
                gconstpointer data)
{
  g_autoptr (RwMeterBook) first = open_book (place);
  g_autoptr (RwMeterBook) second = open_book (place);
  g_autoptr (RwKnownMeter) a = make_meter ("m2");
  g_autoptr (RwKnownMeter) b = make_meter ("m3");

  g_assert_true (rw_meter_book_put (first, a, NULL));
  g_assert_true (rw_meter_book_put (second, b, NULL));
  g_assert_cmpuint (rw_meter_book_get_n (second), ==, 2);
  g_assert_true (rw_meter_book_remove (first, "m2", NULL));

  g_autoptr (RwMeterBook) again = open_book (place);

  g_assert_cmpuint (rw_meter_book_get_n (again), ==, 1);
  check_same (rw_meter_book_get (again, 0), b);
}

static void
test_newer_members_stay (Place        *place,
                         gconstpointer data)
{
  g_autofree char *text = NULL;

  write_text (place, "{\"format\":\"railwright-meters\",\"version\":2,\"owner\":{\"x\":[1,2.5]},\"meters\":["
                     "{\"id\":\"m2\",\"name\":\"old\",\"percent\":0.5,\"counts\":2,\"colour\":\"green\"},"
                     "{\"id\":\"m3\",\"name\":\"b\",\"percent\":1,\"counts\":0,\"age\":7}]}");

  g_autoptr (RwMeterBook) book = open_book (place);
  g_autoptr (RwKnownMeter) meter = make_meter ("m2");

  g_assert_true (rw_meter_book_put (book, meter, NULL));
  g_assert_true (g_file_get_contents (place->path, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "\"colour\":\"green\""));
  g_assert_nonnull (strstr (text, "\"age\":7"));
  g_assert_nonnull (strstr (text, "\"version\":2"));
  g_assert_nonnull (strstr (text, "{\"x\":[1,2.5]}"));
  g_assert_null (strstr (text, "\"old\""));
}

/* --- damage -------------------------------------------------------------------------- */

static guint
count_files (const Place *place)
{
  g_autofree char *below = g_path_get_dirname (place->path);
  g_autoptr (GDir) dir = g_dir_open (below, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_damaged_is_set_aside (Place        *place,
                           gconstpointer data)
{
#define METER "{\"id\":\"m2\",\"percent\":1,\"counts\":2"
#define BOOK(meters) "{\"format\":\"railwright-meters\",\"version\":1,\"meters\":[" meters "]}"
  static const char *const texts[] = {
    "",
    "{",
    "[]",
    "\xff\xfe",
    "{\"format\":\"railwright-meters\",\"version\":1}",
    "{\"format\":\"other\",\"version\":1,\"meters\":[]}",
    "{\"format\":\"railwright-meters\",\"version\":\"1\",\"meters\":[]}",
    BOOK ("7"),
    BOOK ("{\"id\":\"\",\"percent\":1,\"counts\":2}"),
    BOOK ("{\"id\":\"m2\",\"percent\":-1,\"counts\":2}"),
    BOOK ("{\"id\":\"m2\",\"percent\":\"1\",\"counts\":2}"),
    BOOK (METER "}," METER "}"),
    BOOK (METER ",\"mark\":\";\"}"),
    BOOK (METER ",\"rail\":5}"),
    BOOK (METER ",\"address\":\"here\",\"format\":\"lines\"}"),
    BOOK (METER ",\"address\":{\"kind\":\"tcp\",\"host\":\"a\",\"tcp_port\":0},\"format\":\"lines\"}"),
    BOOK (METER ",\"address\":{\"kind\":\"tcp\",\"host\":\"a\",\"tcp_port\":1.5},\"format\":\"lines\"}"),
    BOOK (METER ",\"address\":{\"kind\":\"tcp\",\"host\":\"a\",\"tcp_port\":5025}}"),
    BOOK (METER ",\"address\":{\"kind\":\"serial\",\"port\":\"p\",\"baud\":2400,\"bits\":9,\"parity\":\"none\","
                "\"stop_bits\":1},\"format\":\"lines\"}"),
    BOOK (METER ",\"address\":{\"kind\":\"serial\",\"port\":\"p\",\"baud\":2400,\"bits\":8,\"parity\":\"mark\","
                "\"stop_bits\":1},\"format\":\"lines\"}"),
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *aside = i == 0 ? g_strconcat (place->path, ".damaged", NULL)
                                      : g_strdup_printf ("%s.damaged-%u", place->path, i + 1);
      g_autofree char *kept = NULL;

      write_text (place, texts[i]);

      g_autoptr (RwMeterBook) book = rw_meter_book_new (place->path, &error);

      g_assert_nonnull (book);
      g_assert_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED);
      g_assert_nonnull (strstr (error->message, aside));
      g_assert_cmpuint (rw_meter_book_get_n (book), ==, 0);
      g_assert_false (g_file_test (place->path, G_FILE_TEST_EXISTS));
      g_assert_true (g_file_get_contents (aside, &kept, NULL, NULL));
      g_assert_cmpstr (kept, ==, texts[i]);
      g_assert_cmpuint (count_files (place), ==, i + 1);
    }
}

/* Cut anywhere, the file is set aside, or was whole but for its line end. */
static void
test_cut_anywhere (Place        *place,
                   gconstpointer data)
{
  g_autoptr (RwMeterBook) book = open_book (place);
  g_autoptr (RwKnownMeter) meter = make_meter ("m2");
  g_autofree char *text = NULL;
  gsize n;

  g_assert_true (rw_meter_book_put (book, meter, NULL));
  g_assert_true (g_file_get_contents (place->path, &text, &n, NULL));
  for (gsize cut = 0; cut + 1 < n; cut++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (place->path, text, (gssize) cut, NULL));

      g_autoptr (RwMeterBook) damaged = rw_meter_book_new (place->path, &error);

      g_assert_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED);
    }
}

/* What cannot be read or set aside is never written over. */
static void
test_unreadable_is_kept (Place        *place,
                         gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) put_error = NULL;
  g_autoptr (RwKnownMeter) meter = make_meter ("m2");

  /* A folder of that name, since root may read any file. */
  g_assert_cmpint (g_mkdir_with_parents (place->path, 0700), ==, 0);

  g_autoptr (RwMeterBook) book = rw_meter_book_new (place->path, &error);

  g_assert_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_READ);
  g_assert_false (rw_meter_book_put (book, meter, &put_error));
  g_assert_error (put_error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_WRITE);
  check_same (rw_meter_book_find (book, "m2"), meter);
  g_assert_true (g_file_test (place->path, G_FILE_TEST_IS_DIR));

  /* Once the way is free, all that is held is written. */
  g_autoptr (RwKnownMeter) other = make_meter ("m3");

  g_assert_cmpint (g_rmdir (place->path), ==, 0);
  g_assert_true (rw_meter_book_put (book, other, NULL));

  g_autoptr (RwMeterBook) again = open_book (place);

  g_assert_cmpuint (rw_meter_book_get_n (again), ==, 2);
}

/* --- meters -------------------------------------------------------------------------- */

static void
test_decoder (void)
{
  g_autoptr (RwKnownMeter) meter = make_meter ("m2");
  g_autoptr (RwKnownMeter) eye = make_meter ("m1");
  g_autoptr (GError) error = NULL;
  g_autoptr (RwDecoder) decoder = rw_known_meter_make_decoder (meter, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (rw_decoder_get_format (decoder), ==, "digits-14");
  g_clear_pointer (&eye->address, rw_meter_address_free);
  g_assert_null (rw_known_meter_make_decoder (eye, &error));
  g_assert_no_error (error);

  g_free (meter->format);
  meter->format = g_strdup ("smoke-signals");
  g_assert_null (rw_known_meter_make_decoder (meter, &error));
  g_assert_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION);
  g_clear_error (&error);

  g_free (meter->format);
  meter->format = g_strdup ("lines");
  meter->pattern = g_strdup ("{");
  g_assert_null (rw_known_meter_make_decoder (meter, &error));
  g_assert_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN);
}

static void
test_presets (void)
{
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);

  g_assert_cmpuint (n, >=, 5);
  g_assert_cmpuint (n, <=, 8);
  for (guint i = 0; i < n; i++)
    {
      g_assert_nonnull (strstr (presets[i].title, "typically"));
      g_assert_cmpfloat (presets[i].percent, >, 0);
      g_assert_cmpfloat (presets[i].counts, >=, 0);
      for (guint k = 0; k < i; k++)
        g_assert_cmpstr (presets[i].id, !=, presets[k].id);
      if (!g_str_equal (presets[i].id, "counts-4000"))
        continue;
      g_assert_cmpfloat (presets[i].percent, ==, 0.5);
      g_assert_cmpfloat (presets[i].counts, ==, 2);
    }
}

static void
add (const char *test,
     void (*func) (Place *, gconstpointer))
{
  g_test_add (test, Place, NULL, set_up, func, tear_down);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("/meter-book/round-trip", test_round_trip);
  add ("/meter-book/replace-and-remove", test_replace_and_remove);
  add ("/meter-book/two-books-of-one-file", test_two_books);
  add ("/meter-book/newer-members-stay", test_newer_members_stay);
  add ("/meter-book/damaged-is-set-aside", test_damaged_is_set_aside);
  add ("/meter-book/cut-anywhere", test_cut_anywhere);
  add ("/meter-book/unreadable-is-kept", test_unreadable_is_kept);
  g_test_add_func ("/meter-book/decoder", test_decoder);
  g_test_add_func ("/meter-book/presets", test_presets);
  return g_test_run ();
}

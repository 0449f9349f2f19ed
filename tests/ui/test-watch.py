#!/usr/bin/python3
"""The watch window by keyboard: a wiggle test with resets, a warm-up with its reminder, and the cautions read once.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import ctypes
import threading

from gi.repository import Gio, GLib

from bench_ui import Bench, Failed, newest_session, poll, run, showing, xdo
import bench_ui


def events(key):
    return bench_ui.events(newest_session(practice=True), key)


def focus_window(bench, name):
    """Several windows and a pointer that is nowhere: the keys go where they are sent."""
    xid = poll(lambda: xdo("search", "--onlyvisible", "--name", name).split(), f"the window {name!r}")[-1]
    xdo("windowfocus", xid)
    return poll(lambda: next(w for w in bench.windows() if name in (w.get_name() or "")), f"{name!r} on the bus")


def keep(bench):
    """The settled value, as soon as there is one."""
    before = len(events("reading"))

    def kept():
        bench.keys("space")
        return len(events("reading")) > before

    poll(kept, "a reading to be kept", 20, 0.4)


def test_wiggle():
    """a plug is wiggled and resets are marked by keyboard; the window counts them and the record says so"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the session's file")
        bench.find("text", "Reading of +5 V, board")
        bench.keys("z")
        window = focus_window(bench, "Watch")
        bench.find("label", "Clip the leads", within=window)
        bench.keys("s")
        bench.find("label", "+5 V, board is quiet at", within=window)
        bench.keys("m", "m")
        bench.find("label", "2 resets", within=window)
        marks = [e["mark"]["what"] for e in events("mark")]
        if marks != ["reset seen", "reset seen"]:
            raise Failed(f"marks written: {marks}")
        bench.keys("s")
        bench.find("label", "has ended", within=window)
        poll(lambda: any("Wiggle test at +5 V, board" in e["note"]["text"] and "2 resets" in e["note"]["text"]
                         for e in events("note")), "the test in the record")
        bench.find("label", "use the AC volts range", within=window)


NOTIFICATIONS = """<node><interface name="org.freedesktop.Notifications">
<method name="Notify"><arg type="s" direction="in"/><arg type="u" direction="in"/><arg type="s" direction="in"/>
<arg type="s" direction="in"/><arg type="s" direction="in"/><arg type="as" direction="in"/>
<arg type="a{sv}" direction="in"/><arg type="i" direction="in"/><arg type="u" direction="out"/></method>
<method name="CloseNotification"><arg type="u" direction="in"/></method>
<method name="GetCapabilities"><arg type="as" direction="out"/></method>
<method name="GetServerInformation"><arg type="s" direction="out"/><arg type="s" direction="out"/>
<arg type="s" direction="out"/><arg type="s" direction="out"/></method></interface></node>"""


def keep_notifications(told):
    """A desktop that only remembers: (title, body) of what it is told."""
    answers = {"CloseNotification": None, "GetCapabilities": GLib.Variant("(as)", (["body"],)),
               "GetServerInformation": GLib.Variant("(ssss)", ("test", "test", "1", "1.2"))}

    def call(_connection, _sender, _path, _interface, method, arguments, invocation):
        if method == "Notify":
            told.append((arguments[3], arguments[4]))
        invocation.return_value(GLib.Variant("(u)", (len(told),)) if method == "Notify" else answers[method])

    def serve():
        context = GLib.MainContext.new()
        context.push_thread_default()
        bus = Gio.bus_get_sync(Gio.BusType.SESSION, None)
        interface = Gio.DBusNodeInfo.new_for_xml(NOTIFICATIONS).interfaces[0]
        bus.register_object("/org/freedesktop/Notifications", interface, call, None, None)
        bus.call_sync("org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus", "RequestName",
                      GLib.Variant("(su)", ("org.freedesktop.Notifications", 0)), None, 0, -1, None)
        ready.set()
        GLib.MainLoop.new(context, False).run()

    ready = threading.Event()
    threading.Thread(target=serve, daemon=True).start()
    if not ready.wait(10):
        raise Failed("no desktop to tell")


def look_elsewhere():
    """No window has the keyboard: the root would not do, since the pointer counts then."""
    x11 = ctypes.CDLL("libX11.so.6")
    x11.XOpenDisplay.restype = ctypes.c_void_p
    display = ctypes.c_void_p(x11.XOpenDisplay(None))
    x11.XSetInputFocus(display, ctypes.c_ulong(0), 0, ctypes.c_ulong(0))
    x11.XSync(display, 0)
    x11.XCloseDisplay(display)


def test_background():
    """while no window is in front the desktop is told, once for a due reading"""
    told = []
    keep_notifications(told)
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the session's file")
        bench.find("text", "Reading of +5 V, board")
        keep(bench)
        bench.keys("ctrl+b")
        window = focus_window(bench, "Practice bench")
        for passed in range(1, 3):
            bench.keys("F4")
            poll(lambda: sum("minutes passed" in e["note"]["text"] for e in events("note")) == passed, "time to pass")
        look_elsewhere()
        bench_ui.press(bench.find("push button", "10 min", within=window))
        poll(lambda: told, "the desktop to be told")
        bench.find("label", "the readings at 30 min are due")
        if len(told) != 1 or "Tidepool Racer" not in told[0][0] or "at 30 min are due: +5 V, board" not in told[0][1]:
            raise Failed(f"told: {told}")


def test_warm_up():
    """a reading of the warm-up falls due: a banner says so once, and its point is in when it is taken"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the session's file")
        main = bench.find("text", "Reading of +5 V, board")
        title = next(w.get_name() for w in bench.windows() if w.get_name())
        keep(bench)
        bench.keys("ctrl+b")
        focus_window(bench, "Practice bench")
        for passed in range(1, 4):
            bench.keys("F4")
            poll(lambda: sum("minutes passed" in e["note"]["text"] for e in events("note")) == passed, "time to pass")
        bench.find("label", "the readings at 30 min are due: +5 V, board")
        bench.keys("Escape")
        focus_window(bench, title)
        keep(bench)
        poll(lambda: not bench.there("label", "the readings at 30 min are due"), "the banner to go")
        bench.keys("z")
        window = focus_window(bench, "Watch")
        bench.find("label", "15\u00a0min:\u00a0missed", within=window)
        bench.find("label", "readings worth", within=window)
        if not showing(main):
            raise Failed("the entry went away")


def test_cautions():
    """the cautions stand before the first start and never after they were read"""
    env = {"GSETTINGS_BACKEND": "keyfile"}
    with Bench(env=env) as bench:
        focus_window(bench, "Safety")
        for words in ("no proof that a circuit is dead", "25 kV", "residual-current", "keep one hand out",
                      "Do not work alone", "earth pin", "some 300 V stay", "local code"):
            bench.find("label", words)
        bench.keys("Return")
        poll(lambda: not any(w.get_name() == "Safety" for w in bench.windows()), "the cautions to close")
    with Bench(env=env) as bench:
        bench.find("label", "What is on the bench?")
        if any(w.get_name() == "Safety" for w in bench.windows()):
            raise Failed("the cautions came again")
        bench.keys("shift+F1")
        poll(lambda: any(w.get_name() == "Safety" for w in bench.windows()), "the cautions when asked for")


run(test_wiggle, test_warm_up, test_background, test_cautions)

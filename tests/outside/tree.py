#!/usr/bin/env python3
"""The window read by another program, through the accessibility interface of free desktops (AT-SPI), as a screen reader does.

usage: dbus-run-session -- xvfb-run -a python3 tests/outside/tree.py PROGRAM DRAFT

Starts PROGRAM on DRAFT and reads its whole tree from outside. Held: there is a window; whatever can be pressed, ticked, chosen or typed into has
a name; every piece of the draft is named; a button is pressed from outside and what it opens is in the tree then. Prints how many things
of each kind there are. Needs Debian's at-spi2-core, python3-pyatspi (for its bindings) and dbus. Exits 1 if something does not hold.
"""
import collections
import re
import subprocess
import sys
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, Gio, GLib  # noqa: E402

WAIT = 60.0
# Roles of things that a person does something with.
DONE_WITH = {"push button", "button", "toggle button", "check box", "radio button", "entry", "text", "slider", "spin button", "combo box", "menu item", "link"}


def switch_on():
    """Tells the session that something reads the screen: programs build their trees only then."""
    bus = Gio.bus_get_sync(Gio.BusType.SESSION)
    for name in ("IsEnabled", "ScreenReaderEnabled"):
        value = GLib.Variant("(ssv)", ("org.a11y.Status", name, GLib.Variant("b", True)))
        bus.call_sync("org.a11y.Bus", "/org/a11y/bus", "org.freedesktop.DBus.Properties", "Set", value, None, 0, 5000, None)


def walk(node, found, depth=0):
    if node is None or depth > 60:
        return
    try:
        found.append((node.get_role_name(), node.get_name() or "", node))
        count = node.get_child_count()
    except GLib.Error:
        return
    for i in range(count):
        try:
            child = node.get_child_at_index(i)
        except GLib.Error:
            continue
        walk(child, found, depth + 1)


def tree(pid):
    """Everything of the program with this process number."""
    desktop = Atspi.get_desktop(0)
    for i in range(desktop.get_child_count()):
        app = desktop.get_child_at_index(i)
        try:
            if app is not None and app.get_process_id() == pid:
                found = []
                walk(app, found)
                return found
        except GLib.Error:
            continue
    return []


def until(what, pid):
    """Waits until the tree is as wanted; the last tree."""
    end = time.monotonic() + WAIT
    found = []
    while time.monotonic() < end:
        found = tree(pid)
        if what(found):
            return found
        time.sleep(0.5)
    return found


def main():
    program, draft = sys.argv[1:3]
    text = open(draft, encoding="utf-8").read()
    pieces = re.findall(r'^        \(\n            name: "([^"]+)",\n            (?:letter|note|of|points|steps)', text[text.index("pieces: ["):], re.M)
    switch_on()
    running = subprocess.Popen([program, draft], stderr=subprocess.DEVNULL)
    faults = []
    try:
        named = lambda found: {name for _, name, _ in found}
        found = until(lambda f: len(f) > 40, running.pid)
        kinds = collections.Counter(role for role, _, _ in found)
        print(f"{len(found)} things: " + ", ".join(f"{n} {role}" for role, n in kinds.most_common()))
        if len(found) <= 40:
            faults.append("the tree of the window was not seen")
        for role, name, _ in found:
            if role in DONE_WITH and not name.strip():
                faults.append(f"a {role} has no name")
        words = " ".join(named(found)).replace("_", " ")
        for piece in pieces:
            if piece.replace("_", " ") not in words:
                faults.append(f"the piece {piece} is not named")
        print(f"{len(pieces)} pieces of the draft looked for")
        button = next((node for role, name, node in found if name == "Chart" and role in DONE_WITH), None)
        if button is None:
            faults.append("there is no button Chart")
        else:
            before = named(found)
            Atspi.Action.do_action(button, 0)
            after = until(lambda f: len(named(f) - before) > 20, running.pid)
            new = named(after) - before
            print(f"Chart pressed from outside: {len(new)} new names, such as {sorted(new)[:4]}")
            if len(new) <= 20:
                faults.append("pressing Chart from outside changed nothing")
    finally:
        running.kill()
        running.wait()
    for fault in faults:
        print(f"wrong: {fault}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/python3
"""The icons draw at every size that desktops use, and the symbolic one can be given any colour.

SPDX-License-Identifier: GPL-3.0-or-later

usage: check-icons.py SOURCE_ROOT
"""

import re
import sys
from pathlib import Path

try:
    import gi
    gi.require_version("GdkPixbuf", "2.0")
    from gi.repository import GdkPixbuf, GLib
except (ImportError, ValueError) as error:
    print(error)
    sys.exit(77)

SIZES = (16, 24, 32, 48, 64, 128, 256)


def alphas(path, size):
    """The opacity of every pixel, row by row."""
    pixbuf = GdkPixbuf.Pixbuf.new_from_file_at_scale(str(path), size, size, True)
    if not pixbuf.get_has_alpha() or (pixbuf.get_width(), pixbuf.get_height()) != (size, size):
        raise ValueError("is not square with a transparent ground")
    pixels, stride = pixbuf.get_pixels(), pixbuf.get_rowstride()
    return [pixels[y * stride + x * 4 + 3] for y in range(size) for x in range(size)]


def problems(path):
    for size in SIZES:
        try:
            inked = sum(1 for alpha in alphas(path, size) if alpha > 127) / size ** 2
        except (GLib.Error, ValueError) as error:
            yield f"{path} at {size} pixels: {error}"
            continue
        if not 0.2 < inked < 0.98:
            yield f"{path} at {size} pixels: {inked:.0%} of it is inked"


def symbolic_problems(path):
    """One colour, no strokes, gradients or masks: desktops recolour fills only."""
    text = path.read_text("utf-8")
    colours = set(re.findall(r'(?:fill|stroke)="(#[0-9a-fA-F]+|[a-z]+)"', text))
    if len(colours) != 1 or re.search(r"stroke=|Gradient|<mask|<style", text):
        yield f"{path} uses more than fills of one colour: {sorted(colours)}"


def main(root):
    icons = sorted(Path(root, "data", "icons", "hicolor").rglob("*.svg"))
    symbolic = [path for path in icons if path.stem.endswith("-symbolic")]
    found = [text for path in icons for text in problems(path)]
    found += [text for path in symbolic for text in symbolic_problems(path)]
    print("\n".join(found))
    sys.exit(1 if found or len(icons) < 3 or not symbolic else 0)


main(sys.argv[1])

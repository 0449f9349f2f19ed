#!/usr/bin/python3
"""Every .ui file is well-formed and builds, as GTK's own validator sees it.

SPDX-License-Identifier: GPL-3.0-or-later

usage: env.sh check-ui.py SOURCE_ROOT

The validator knows GTK's classes only. Where a file uses one of ours, a plain box stands in for it, without the
properties and signals that only ours has; that our classes take those is for the tests that make every widget.
"""

import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path


def stand_in(tree):
    for element in tree.iter("object"):
        if element.get("class", "").startswith("Rw"):
            element.set("class", "GtkBox")
            for child in [c for c in element if c.tag in ("property", "signal", "binding")]:
                element.remove(child)


def problems(source, work):
    try:
        tree = ET.parse(source)
    except ET.ParseError as error:
        return f"{source}: {error}"
    stand_in(tree)
    copy = Path(work) / source.name
    tree.write(copy, encoding="UTF-8", xml_declaration=True)
    run = subprocess.run(["gtk4-builder-tool", "validate", copy], capture_output=True, text=True)
    text = (run.stdout + run.stderr).strip()
    if run.returncode != 0 or text:
        return f"{source}: {text or f'the validator ended with {run.returncode}'}"
    return None


def main(root):
    if not shutil.which("gtk4-builder-tool"):
        print("gtk4-builder-tool is not installed")
        sys.exit(77)
    sources = sorted(Path(root, "src").rglob("*.ui"))
    with tempfile.TemporaryDirectory() as work:
        found = [text for source in sources if (text := problems(source, work))]
    print("\n".join(found))
    print(f"{len(sources)} files, {len(found)} with problems")
    sys.exit(1 if found or not sources else 0)


main(sys.argv[1])

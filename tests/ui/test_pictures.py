"""The pictures of the main screens, drawn as the command does: in a program of its own."""

import shutil
import subprocess
import sys

from PIL import Image


def draw(shelf, out):
    """Draw those screens whose number begins with 1 or 8; what the program said and returned."""
    code = (
        "import sys; from pathlib import Path\n"
        "from ui import pictures\n"
        "of_all = pictures.screens\n"
        "pictures.screens = lambda: (s for s in of_all() if s.name[0] in '18')\n"
        "raise SystemExit(pictures.main(sys.argv[1:]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(shelf), str(out)],
        capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    for name in ("1-open-binder", "8-new-reading", "13-recall"):
        assert (out / f"{name}.png").read_bytes()[:4] == b"\x89PNG"


HELD = ("8-new-reading", "11-card-leaf", "12-course-plan")
"""Screens that a new course has something of its own for."""


def left_leaf(path):
    """The middle of the left leaf on a picture, in greys."""
    with Image.open(path) as image:
        assert image.size == (1600, 1000)
        return image.convert("L").crop((280, 150, 760, 850))


def inked(leaf):
    """Which share of a leaf is as dark as ink."""
    return sum(leaf.histogram()[:110]) / (leaf.width * leaf.height)


def test_they_are_drawn_and_nothing_else_is_said(sample_folder, tmp_path):
    before = {path.name: path.read_bytes() for path in sample_folder.iterdir()}
    draw(sample_folder, tmp_path)
    assert {path.name: path.read_bytes() for path in sample_folder.iterdir()} == before


def test_a_new_course_is_drawn_with_what_it_holds(course_folder, tmp_path):
    """Its plan, a leaf of a card, and a reading being typed; it has none to lay open yet."""
    out = tmp_path / "pictures"
    draw(shutil.copytree(course_folder, tmp_path / "shelf"), out)
    shown = {name: left_leaf(out / f"{name}.png") for name in HELD}
    assert len({leaf.tobytes() for leaf in shown.values()}) == len(HELD)
    for name, leaf in shown.items():
        assert inked(leaf) > 0.01, name

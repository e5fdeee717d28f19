"""The pictures of the main screens, drawn as the command does: in a program of its own."""

import shutil
import subprocess
import sys


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


def test_they_are_drawn_and_nothing_else_is_said(sample_folder, tmp_path):
    before = {path.name: path.read_bytes() for path in sample_folder.iterdir()}
    draw(sample_folder, tmp_path)
    assert {path.name: path.read_bytes() for path in sample_folder.iterdir()} == before


def test_a_new_course_is_drawn_with_what_it_holds(course_folder, tmp_path):
    shelf = shutil.copytree(course_folder, tmp_path / "shelf")
    draw(shelf, tmp_path / "pictures")

"""The pictures of the main screens, drawn as the command does: in a program of its own."""

import subprocess
import sys


def test_they_are_drawn_and_nothing_else_is_said(sample_folder, tmp_path):
    code = (
        "import sys; from pathlib import Path\n"
        "from ui import pictures\n"
        "of_all = pictures.screens\n"
        "pictures.screens = lambda: (s for s in of_all() if s.name[0] in '18')\n"
        "raise SystemExit(pictures.main(sys.argv[1:]))"
    )
    before = {path.name: path.read_bytes() for path in sample_folder.iterdir()}
    done = subprocess.run(
        [sys.executable, "-c", code, str(sample_folder), str(tmp_path)],
        capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    for name in ("1-open-binder", "8-new-reading", "13-recall"):
        assert (tmp_path / f"{name}.png").read_bytes()[:4] == b"\x89PNG"
    assert {path.name: path.read_bytes() for path in sample_folder.iterdir()} == before

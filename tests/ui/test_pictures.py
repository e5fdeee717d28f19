"""The pictures of the main screens, drawn as the command does: in a program of its own."""

import subprocess
import sys


def test_they_are_drawn_and_nothing_else_is_said(sample_folder, tmp_path):
    code = (
        "import sys; from pathlib import Path; from itertools import islice\n"
        "from ui import pictures\n"
        "of_all = pictures.screens; pictures.screens = lambda: islice(of_all(), 1)\n"
        "raise SystemExit(pictures.main(sys.argv[1:]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(sample_folder), str(tmp_path)],
        capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert (tmp_path / "1-open-binder.png").read_bytes()[:4] == b"\x89PNG"

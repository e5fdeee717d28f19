"""The letters are cut once, beside the window, and nothing is left behind when it is shut."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from ui.look import fonts


@pytest.fixture
def surroundings(tmp_path):
    """Those of a user who never started the program."""
    return os.environ | {"XDG_CACHE_HOME": str(tmp_path), "HOME": str(tmp_path)}


def test_cut_alone_they_are_all_there(tmp_path, monkeypatch):
    monkeypatch.setattr(fonts, "CUTS", fonts.CUTS[:2])
    assert fonts.make_missing(tmp_path, alone=True) == 2
    assert fonts.missing(tmp_path) == []
    assert fonts.make_missing(tmp_path, alone=True) == 0


@pytest.mark.skipif(not Path("/proc").is_dir(), reason="processes are listed in /proc")
def test_a_window_shut_while_they_are_cut_leaves_no_process(surroundings):
    cutting = subprocess.Popen(
        [sys.executable, "-m", "ui.look.fonts", "gently"], env=surroundings, stdout=subprocess.PIPE
    )
    with pytest.raises(subprocess.TimeoutExpired):
        cutting.wait(1.5)
    made = children(cutting.pid)
    cutting.kill()
    cutting.communicate()
    assert made == []


def children(pid):
    """Process numbers of the children of a process."""
    found = []
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            parent = int(stat.read_text().rpartition(")")[2].split()[1])
        except (FileNotFoundError, ProcessLookupError):
            continue
        if parent == pid:
            found.append(int(stat.parent.name))
    return found

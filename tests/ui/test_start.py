"""Starting: what a machine is told before a window can open."""

import ast
import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from binder.errors import CanMend
from ui import start
from ui.setup.environment import Environment

ROOT = Path(__file__).parents[2]


def test_an_old_python_is_told_in_one_sentence():
    assert start.too_old(3, 10).startswith(
        "Ringbound needs Python 3.11 or newer and this is Python 3.10;"
    )
    assert start.too_old(3, 11) == start.too_old(3, 14) == start.too_old(4, 0) == ""


@pytest.mark.parametrize("name", ["ui/start.py", "tests/run.py"])
def test_an_old_python_can_read_as_far_as_that_sentence(name):
    ast.parse((ROOT / name).read_text(), feature_version=(3, 7))


@pytest.mark.parametrize("module", ["ui.start", "ui.setup.fetching", "tests.run"])
def test_the_standard_library_is_enough(module):
    """-S keeps every installed package out of reach."""
    subprocess.run([sys.executable, "-S", "-c", f"import {module}"], cwd=ROOT, check=True)


@pytest.mark.skipif(sys.platform != "linux", reason="other systems always have a display")
class TestDisplay:
    def test_none(self):
        assert not start.has_display({})

    def test_an_x_display_that_answers(self):
        name = f":{90000 + os.getpid()}"
        assert not start.has_display({"DISPLAY": name})
        with socket.socket(socket.AF_UNIX) as server:
            server.bind(f"\0/tmp/.X11-unix/X{name[1:]}")
            server.listen()
            assert start.has_display({"DISPLAY": f"{name}.0"})

    def test_one_on_another_machine_is_believed(self):
        assert start.has_display({"DISPLAY": "parlour:10.0"})

    def test_wayland(self, tmp_path):
        wayland = {"WAYLAND_DISPLAY": "wayland-0", "XDG_RUNTIME_DIR": str(tmp_path)}
        assert not start.has_display(wayland)
        (tmp_path / "wayland-0").touch()
        assert start.has_display(wayland)

    def test_a_chosen_platform_of_qt_is_believed(self):
        assert start.has_display({"QT_QPA_PLATFORM": "offscreen"})

    def test_without_one_the_sentence_names_commands_that_work(self, monkeypatch):
        for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
            monkeypatch.delenv(name, raising=False)
        place = Environment(ROOT, ROOT / ".venv")
        with pytest.raises(CanMend) as told:
            start.need_display(place)
        assert str(told.value).count(".") == str(place.command).count(".") + 1
        shown = subprocess.run(
            [sys.executable, "-m", "binder.cli", "--help"], cwd=ROOT, capture_output=True, text=True
        ).stdout
        for command in ("find", "log", "print", "check", "pictures"):
            assert command in str(told.value)
            assert f"    {command} " in shown

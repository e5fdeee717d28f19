"""Which system libraries are missing, and what Debian calls them."""

import sys
from pathlib import Path

import pytest

from binder.errors import CanMend
from ui.setup import system

LINUX = sys.platform == "linux"

# As ldd of glibc 2.36 prints it.
REPORT = """\
/somewhere/libqxcb.so:
\tlinux-vdso.so.1 (0x00007ffd3f5f2000)
\tlibxcb-cursor.so.0 => not found
\tlibQt6Gui.so.6 => /somewhere/libQt6Gui.so.6 (0x00007f1c2a000000)
/somewhere/libQt6Gui.so.6:
\tlibGL.so.1 => not found
\tlibxcb-cursor.so.0 => not found
"""


def test_each_missing_library_is_named_once():
    assert system.lost_in(REPORT) == ["libGL.so.1", "libxcb-cursor.so.0"]


@pytest.mark.parametrize(
    ("library", "package"),
    [  # from the package lists of Debian 12, packages.debian.org
        ("libGL.so.1", "libgl1"),
        ("libEGL.so.1", "libegl1"),
        ("libX11-xcb.so.1", "libx11-xcb1"),
        ("libxkbcommon.so.0", "libxkbcommon0"),
        ("libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
        ("libdbus-1.so.3", "libdbus-1-3"),
        ("libfontconfig.so.1", "libfontconfig1"),
        ("libfreetype.so.6", "libfreetype6"),
        ("libglib-2.0.so.0", "libglib2.0-0"),
        ("libgthread-2.0.so.0", "libglib2.0-0"),
        ("libbrotlidec.so.1", "libbrotli1"),
        ("libgssapi_krb5.so.2", "libgssapi-krb5-2"),
        ("libxcb-cursor.so.0", "libxcb-cursor0"),
        ("libxcb-icccm.so.4", "libxcb-icccm4"),
        ("libxcb-render-util.so.0", "libxcb-render-util0"),
        ("libxcb-xkb.so.1", "libxcb-xkb1"),
        ("libwayland-client.so.0", "libwayland-client0"),
        ("libz.so.1", "zlib1g"),
    ],
)
def test_debians_name_for_a_library(library, package):
    assert system.package(library) == package


def test_qt_finds_everything_here():
    """The tests run on a machine that has been set up, so nothing may be missing."""
    assert system.missing(Path(sys.prefix)) == []


def test_every_part_of_qt_that_is_looked_at_is_there():
    if LINUX:
        (qt,) = Path(sys.prefix).glob("lib/python*/site-packages/PySide6/Qt")
        assert [part for part in system.PARTS if not (qt / part).exists()] == []


def test_nothing_installed_is_nothing_missing(tmp_path):
    assert system.missing(tmp_path) == []


def test_without_apt_get_the_libraries_are_named(monkeypatch, tmp_path):
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(CanMend, match=r"Qt needs parts .* not there: libGL\.so\.1; install them"):
        system.install(["libgl1"], "Qt needs", ["libGL.so.1"])


def command(folder: Path, name: str, text: str) -> None:
    (folder / name).write_text(f"#!/bin/sh\n{text}\n")
    (folder / name).chmod(0o755)


@pytest.mark.skipif(not LINUX, reason="apt-get is Debian's")
def test_without_rights_the_sentence_is_what_to_run(monkeypatch, tmp_path, capsys):
    command(tmp_path, "apt-get", "exit 0")
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(system, "administrator", lambda: None)
    with pytest.raises(CanMend, match=r"run `sudo apt-get install libgl1 libegl1`, then the same"):
        system.install(["libgl1", "libegl1"], "Qt needs", [])


@pytest.mark.skipif(not LINUX, reason="apt-get is Debian's")
def test_what_apt_get_cannot_do_is_one_sentence_after_its_own(monkeypatch, tmp_path, capfd):
    command(tmp_path, "apt-get", "echo no such package >&2; exit 100")
    command(tmp_path, "env", 'shift; exec "$@"')
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(system, "administrator", lambda: [])
    with pytest.raises(CanMend, match="could not be installed; see that"):
        system.install(["libgl1", "libegl1"], "Qt needs", [])
    told = capfd.readouterr()
    assert "Qt needs packages of the system that are not there: libgl1 libegl1." in told.out
    assert told.err == "no such package\n"

"""Installed for the user alone, and uninstalled without a trace but what the user wrote."""

import configparser
import shlex
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ET

import pytest

from binder.errors import CanMend
from binder.resources import resource
from ui.bundle import linux, telling
from ui.bundle.icons import draw
from ui.bundle.install import install
from ui.bundle.places import Places
from ui.bundle.uninstall import uninstall

pytestmark = pytest.mark.skipif(
    sys.platform in ("win32", "darwin"), reason="what Linux desktops read"
)
NAMES = ("ringbound", "ringbound-window", "install", "uninstall")


@pytest.fixture(scope="module")
def icons(tmp_path_factory):
    folder = tmp_path_factory.mktemp("icons")
    draw(folder)
    return folder


@pytest.fixture
def folder(tmp_path):
    """The folder somebody unpacked; each of its programs says its name and what it was given."""
    made = tmp_path / "Fetched" / "Ringbound"
    (made / "_internal" / "parts").mkdir(parents=True)
    (made / "_internal" / "parts" / "one.txt").write_text("a part")
    (made / "_internal" / "link.txt").symlink_to("parts/one.txt")
    for name in NAMES:
        (made / name).write_text(f'#!/bin/sh\necho {name} "$@"\n')
        (made / name).chmod(0o755)
    return made


@pytest.fixture
def places(tmp_path):
    home = tmp_path / "a home"
    made = Places(home, home / ".local/share", home / ".config/ringbound", home / "Documents")
    shelf = made.documents / "Ringbound" / "My course"
    shelf.mkdir(parents=True)
    (shelf / "Practice.ringbound").write_bytes(b"written")
    return made


def state(home):
    """Everything in a folder: what files hold, where links lead."""
    return {
        path.relative_to(home).as_posix(): path.readlink()
        if path.is_symlink()
        else path.read_bytes()
        if path.is_file()
        else None
        for path in home.rglob("*")
    }


def entry(places):
    read = configparser.ConfigParser(interpolation=None, strict=True)
    read.optionxform = str
    read.read(places.data / "applications" / "ringbound.desktop", encoding="utf-8")
    return read["Desktop Entry"]


class TestInstalled:
    def test_the_program_is_copied_whole(self, folder, icons, places):
        told = install(folder, icons, places)
        assert state(places.program) == state(folder)
        assert told.startswith("Ringbound is installed")

    def test_the_menu_begins_the_window_with_the_file(self, folder, icons, places):
        install(folder, icons, places)
        assert entry(places)["Type"] == "Application"
        assert entry(places)["MimeType"] == "application/x-ringbound;"
        command = shlex.split(entry(places)["Exec"].replace("%f", "'A B.ringbound'"))
        told = subprocess.run(command, capture_output=True, text=True, check=True).stdout
        assert told == "ringbound-window A B.ringbound\n"

    @pytest.mark.skipif(not shutil.which("desktop-file-validate"), reason="is not installed")
    def test_the_entry_keeps_to_the_specification(self, folder, icons, places):
        install(folder, icons, places)
        file = places.data / "applications" / "ringbound.desktop"
        told = subprocess.run(["desktop-file-validate", file], capture_output=True, text=True)
        assert (told.returncode, told.stdout) == (0, "")

    @pytest.mark.skipif(not shutil.which("update-mime-database"), reason="is not installed")
    def test_the_system_knows_the_type_by_its_ending(self, folder, icons, places):
        install(folder, icons, places)
        lines = (places.data / "mime" / "globs2").read_text().splitlines()
        assert "50:application/x-ringbound:*.ringbound" in lines

    def test_there_is_an_icon_for_the_program_and_for_its_files(self, folder, icons, places):
        install(folder, icons, places)
        theme = places.data / "icons" / "hicolor"
        for name in ("apps/ringbound", "mimetypes/application-x-ringbound"):
            assert (theme / "48x48" / f"{name}.png").read_bytes().startswith(b"\x89PNG")
            assert (theme / "scalable" / f"{name}.svg").is_file()

    def test_the_commands_can_be_typed(self, folder, icons, places):
        install(folder, icons, places)
        command = places.home / ".local" / "bin" / "ringbound"
        told = subprocess.run([command, "check"], capture_output=True, text=True, check=True)
        assert told.stdout == "ringbound check\n"

    def test_another_command_of_that_name_is_left_alone(self, folder, icons, places):
        taken = places.home / ".local" / "bin" / "ringbound"
        taken.parent.mkdir(parents=True)
        taken.write_text("of another installation")
        assert "The command “ringbound” was left as it is" in install(folder, icons, places)
        uninstall(places)
        assert taken.read_text() == "of another installation"

    def test_a_newer_one_takes_its_place(self, folder, icons, places):
        install(folder, icons, places)
        (folder / "_internal" / "parts" / "one.txt").rename(folder / "_internal" / "new.txt")
        (folder / "_internal" / "link.txt").unlink()
        install(folder, icons, places)
        assert state(places.program) == state(folder)

    def test_from_where_it_is_installed_it_is_not_installed_again(self, folder, icons, places):
        install(folder, icons, places)
        with pytest.raises(CanMend, match="installed already"):
            install(places.program, icons, places)
        assert state(places.program) == state(folder)


class TestUninstalled:
    def test_it_leaves_everything_as_it_was(self, folder, icons, places):
        before = state(places.home)
        install(folder, icons, places)
        assert state(places.home) != before
        told = uninstall(places)
        assert state(places.home) == before
        assert str(places.documents / "Ringbound") in told

    def test_what_other_programs_put_stays(self, folder, icons, places):
        for path in ("applications/other.desktop", "icons/hicolor/48x48/apps/other.png"):
            (places.data / path).parent.mkdir(parents=True, exist_ok=True)
            (places.data / path).write_text("[Desktop Entry]\nType=Application\nName=Other\n")
        types = places.data / "mime" / "packages" / "other.xml"
        types.parent.mkdir(parents=True)
        types.write_text(resource("desktop", "ringbound.xml").read_text().replace("ringb", "b"))
        before = set(state(places.home))
        install(folder, icons, places)
        uninstall(places)
        assert before <= set(state(places.home))
        left = [path for path in state(places.home) if "ringbound" in path and path not in before]
        assert left == []

    def test_the_sample_shelf_and_the_settings_stay_and_are_named(self, folder, icons, places):
        install(folder, icons, places)
        for path in (places.record.parent / "Sample shelf" / "built", places.settings / "desk.ini"):
            path.parent.mkdir(parents=True)
            path.touch()
        told = uninstall(places)
        assert (places.record.parent / "Sample shelf" / "built").exists()
        assert (places.settings / "desk.ini").exists()
        assert f"the sample shelf in “{places.record.parent}” and your settings" in told
        assert f"in “{places.settings}”; delete" in told

    def test_what_somebody_put_beside_the_program_stays(self, folder, icons, places):
        install(folder, icons, places)
        (places.program / "notes.txt").write_text("mine")
        uninstall(places)
        assert state(places.program) == {"notes.txt": b"mine"}

    def test_where_it_is_not_installed_it_says_so(self, places):
        before = state(places.home)
        with pytest.raises(CanMend, match="not installed here"):
            uninstall(places)
        assert state(places.home) == before

    def test_a_damaged_note_is_said(self, folder, icons, places):
        install(folder, icons, places)
        places.record.write_text("{")
        with pytest.raises(CanMend, match="could not be removed whole"):
            uninstall(places)


def test_where_it_cannot_be_put_nothing_is_left(folder, icons, places):
    places.data.mkdir(parents=True)
    (places.data / "applications").write_text("a file where a folder should be")
    before = state(places.home)
    with pytest.raises(CanMend, match="nothing was left behind"):
        install(folder, icons, places)
    assert state(places.home) == before


@pytest.mark.parametrize(
    "path", ["/home/ada/x", "/home/a da/x", '/home/a"d$a/x', "/home/50%/x", "/home/a\\d`a/x"]
)
def test_any_path_can_stand_in_a_desktop_entry(path):
    """Undone as the Desktop Entry Specification 1.5 has it: escapes of a string, then quotes."""
    told = linux.word(path).replace("\\\\", "\\")
    if told.startswith('"'):
        told = told[1:-1]
        for sign in '"`$\\':
            told = told.replace(f"\\{sign}", sign)
    assert told.replace("%%", "%") == path


def test_the_type_is_said_in_the_words_of_the_specification():
    space = "{http://www.freedesktop.org/standards/shared-mime-info}"
    (kind,) = ET.parse(resource("desktop", "ringbound.xml")).getroot()
    assert kind.attrib == {"type": "application/x-ringbound"}
    assert kind.find(f"{space}glob").attrib == {"pattern": "*.ringbound"}
    assert kind.find(f"{space}comment").text == "Ringbound binder"


class TestTold:
    """Under pytest there is no terminal; without a display it is printed and no more."""

    def test_what_went_well(self, capsys, monkeypatch):
        for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
            monkeypatch.delenv(name, raising=False)
        assert telling.tell(lambda: "It is installed.") == 0
        assert capsys.readouterr() == ("It is installed.\n", "")

    def test_what_did_not(self, capsys, monkeypatch):
        for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
            monkeypatch.delenv(name, raising=False)

        def fail():
            raise CanMend("Make room.")

        assert telling.tell(fail) == 2
        assert capsys.readouterr() == ("", "Make room.\n")

    def test_after_a_double_click_in_a_window(self, qapp, qtbot, monkeypatch):
        from PySide6.QtCore import QTimer
        from PySide6.QtWidgets import QApplication, QMessageBox

        seen = []

        def read():
            box = QApplication.activeModalWidget()
            if isinstance(box, QMessageBox):
                seen.append(box.text())
                box.accept()

        closing = QTimer(interval=1)
        closing.timeout.connect(read)
        closing.start()
        monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
        assert telling.tell(lambda: "It is installed.") == 0
        closing.stop()
        assert seen == ["It is installed."]

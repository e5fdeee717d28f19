"""What goes into the bundle, and what each system is told of it."""

import plistlib
import shutil
import subprocess
import sys
from pathlib import Path, PureWindowsPath

import pytest
from PySide6.QtGui import QImage

from binder.resources import ROOT
from ui.bundle import icons, launch, licences, macos, make, recipe, windows


class TestRecipe:
    def test_every_module_a_program_begins_with_goes_in(self):
        assert set(launch.BEGUN_BY.values()) <= set(recipe.modules())
        assert set(launch.BEGUN_BY) == {*recipe.NAMES, *recipe.INSTALLERS}
        assert "binder.paper.leaves.card" in recipe.modules()
        assert "ui.bundle.make" not in recipe.modules()

    def test_every_file_the_program_reads_goes_in_but_no_picture_of_readme(self):
        places = {(Path(path).name, folder) for path, folder in recipe.data()}
        assert ("palette.toml", "resources") in places
        assert ("shelf.toml", "sample_binders") in places
        assert ("0001_first_binder.py", "binder/store/migrations") in places
        assert ("pyproject.toml", ".") in places
        assert not [folder for _, folder in places if "pictures" in folder]

    @pytest.mark.parametrize(
        ("place", "stays"),
        [
            ("PySide6/Qt/plugins/platforms/libqxcb.so", True),
            ("PySide6/Qt/plugins/platforms/libqwayland.so", True),
            ("PySide6/Qt/plugins/platforms/libqoffscreen.so", True),
            ("PySide6/Qt/plugins/platforms/libqvnc.so", False),
            ("PySide6\\plugins\\platforms\\qwindows.dll", True),
            ("PySide6\\plugins\\platforms\\qminimal.dll", False),
            ("PySide6\\opengl32sw.dll", False),
            ("PySide6/Qt/translations/qtbase_de.qm", False),
            ("PySide6/Qt/plugins/imageformats/libqjpeg.so", True),
            ("resources/palette.toml", True),
        ],
    )
    def test_what_is_never_reached_for_is_left_out(self, place, stays):
        assert bool(recipe.wanted([(place, "", "BINARY")])) == stays

    def test_libraries_nothing_is_linked_to_are_left_out(self):
        names = ["app/own.so", "liba.so.1", "libb.so.1", "libc9.so.1", "libX11.so.6"]
        linked = {"app/own.so": {"liba.so.1"}, "liba.so.1": {"libb.so.1", "libX11.so.6"}}
        rows = [(name, name, "BINARY") for name in names]
        kept = recipe.reached(rows, lambda path: linked.get(path, set()))
        assert [row[0] for row in kept] == ["app/own.so", "liba.so.1", "libb.so.1"]

    def test_two_files_of_one_name_are_not_taken_for_one(self):
        rows = [("one/_sqlite3.so", "1", "EXTENSION"), ("two/_sqlite3.so", "2", "EXTENSION")]
        assert recipe.reached(rows, lambda _: set()) == rows

    def test_no_link_leads_nowhere(self):
        rows = [("Qt/lib/liba.so", "", "BINARY"), ("liba.so", "", "SYMLINK")]
        assert recipe.unbroken(rows) == rows
        assert recipe.unbroken(rows[1:]) == []

    @pytest.mark.skipif(
        sys.platform != "linux" or not shutil.which("objdump"), reason="asks objdump"
    )
    def test_the_libraries_a_file_is_linked_to_are_told(self):
        import PySide6

        plugin = Path(PySide6.__file__).parent / "Qt/plugins/platforms/libqxcb.so"
        needed = recipe.needed(str(plugin))
        assert {"libQt6XcbQpa.so.6", "libxcb-cursor.so.0"} <= needed
        assert "libexpat.so.1" not in needed  # which only fontconfig is linked to


def test_the_command_needs_nothing_but_the_standard_library():
    subprocess.run([sys.executable, "-S", "-c", "import ui.bundle.make"], cwd=ROOT, check=True)


class TestMacOS:
    def test_the_list_of_properties_declares_the_type_and_opens_it(self):
        """Keys from Apple's Information Property List, Core Foundation and Launch Services."""
        info = plistlib.loads(plistlib.dumps(macos.info("1.2.3")))
        assert info["CFBundleShortVersionString"] == "1.2.3"
        (opened,) = info["CFBundleDocumentTypes"]
        (declared,) = info["UTExportedTypeDeclarations"]
        assert opened["LSItemContentTypes"] == [declared["UTTypeIdentifier"]]
        assert declared["UTTypeTagSpecification"]["public.filename-extension"] == ["ringbound"]
        assert info["CFBundleExecutable"] in recipe.NAMES


class TestWindows:
    PROGRAM = PureWindowsPath(r"C:\Users\Ada L\AppData\Local\Programs\Ringbound")

    def test_the_ending_leads_to_the_program(self):
        """As Microsoft's "File Types" and "Application Registration" have it."""
        keys = windows.keys(self.PROGRAM, "1.2.3")
        kind = keys[r"Software\Classes\.ringbound"][""]
        command = keys[rf"Software\Classes\{kind}\shell\open\command"][""]
        assert command == rf'"{self.PROGRAM}\ringbound-window.exe" "%1"'

    def test_it_stands_under_installed_apps(self):
        keys = windows.keys(self.PROGRAM, "1.2.3")
        listed = keys[r"Software\Microsoft\Windows\CurrentVersion\Uninstall\Ringbound"]
        assert listed["DisplayVersion"] == "1.2.3"
        assert listed["UninstallString"] == rf'"{self.PROGRAM}\uninstall.exe"'

    def test_a_key_comes_after_the_one_it_lies_in(self):
        """So that backwards each one is empty when it is deleted."""
        keys = list(windows.keys(self.PROGRAM, ""))
        assert all(
            keys.index(outer) < keys.index(inner)
            for outer in keys
            for inner in keys
            if inner.startswith(f"{outer}\\")
        )

    def test_a_quote_in_the_path_does_not_end_the_command(self):
        assert "O''Hara" in windows.shortcut(PureWindowsPath(r"C:\Users\O'Hara"))


class TestIcons:
    def test_each_size_is_drawn(self, tmp_path):
        for path in icons.draw(tmp_path):
            image = QImage(str(path))
            assert image.width() == image.height() == int(path.stem)
            assert image.pixelColor(0, 0).alpha() == 0
            assert image.pixelColor(image.width() // 4, image.height() // 2).alpha() == 255


class TestLaunch:
    def test_a_library_the_system_lacks_is_named_with_its_package(self, tmp_path):
        report = "libEGL.so.1: cannot open shared object file: No such file or directory"
        sentence = launch.lacking(report, tmp_path)
        assert "needs libEGL.so.1" in sentence
        assert "sudo apt-get install libegl1`" in sentence

    def test_a_fault_of_ours_is_none_of_the_system(self, tmp_path):
        assert launch.lacking("No module named 'binder.nothing'", tmp_path) == ""


class TestPacked:
    def test_the_licences_of_libraries_are_kept(self, tmp_path):
        licences.gather(tmp_path)
        kept = {path.name for path in (tmp_path / "licences").iterdir()}
        assert {"peewee", "typst", "pypdfium2"} <= {name.lower() for name in kept}
        assert all(any(path.iterdir()) for path in (tmp_path / "licences").iterdir())

    def test_sizes_count_a_file_once(self, tmp_path):
        (tmp_path / "one").write_bytes(b"123")
        if sys.platform != "win32":
            (tmp_path / "two").symlink_to("one")
        assert make.size(tmp_path) == make.size(tmp_path / "one") == 3
        assert make.megabytes(66_700_000) == "67 MB"

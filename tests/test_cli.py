"""The ringbound command: what it prints, what it refuses, and with which exit code."""

import json
import re
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from binder import cli
from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.store.shelf import Shelf
from binder.study.cards import appearances
from binder.study.decks import decks
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves, tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading
from binder.study.sources import sources
from binder.study.spreads import spreads
from tests.paper.reading_back import texts


@pytest.fixture
def run(capsys):
    """Run a command; returns exit code, stdout and stderr."""

    def command(*words):
        try:
            code = cli.main([str(word) for word in words])
        except SystemExit as end:
            code = end.code
        out, err = capsys.readouterr()
        return code, out, err

    return command


@pytest.fixture
def folder(run, tmp_path):
    """A shelf with a new course."""
    path = tmp_path / "course"
    assert run("new", path, "--start", "2026-03-02")[0] == 0
    return path


def log(run, folder, cards="3w, hermit r, qc", **more):
    options = {"--binder": "Practice", "--spread": "three-card", "--question": "Move to the quay?"}
    words = [word for pair in (options | more).items() for word in pair]
    return run("log", folder, *words, cards)


def test_version_is_that_of_the_project(run):
    project = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text())["project"]
    assert run("--version") == (0, f"ringbound {project['version']}\n", "")


def test_new_lays_out_three_binders_and_says_so(run, tmp_path):
    code, out, err = run("new", tmp_path / "course")
    assert (code, err) == (0, "")
    assert [line.split("“")[1].split("”")[0] for line in out.splitlines()] == [
        "Foundations",
        "Practice",
        "Mastery",
    ]


def test_new_will_not_write_over_a_shelf(run, folder):
    code, out, err = run("new", folder)
    assert (code, out) == (2, "")
    assert "already" in err
    assert err.count("\n") == 1


def test_log_writes_a_reading_that_can_be_read(run, folder):
    code, out, _ = log(run, folder, **{"--date": "2026-11-22T19:30"})
    assert code == 0
    assert "Three of Wands, The Hermit reversed, Queen of Cups" in out
    shelf = Shelf(folder)
    found = appearances.of_card(shelf, "major-09")
    assert [(one.day, one.reversed) for one in found] == [("2026-11-22T19:30", True)]
    shelf.close()


@pytest.mark.parametrize(
    ("date", "day", "words"),
    [
        ("2026-11-22", "2026-11-22", "Sunday 22 November 2026, no hour noted"),
        ("2026-11-22T00:00", "2026-11-22T00:00", "Sunday 22 November 2026, 00:00"),
        ("22 Nov 2026", "2026-11-22", "Sunday 22 November 2026, no hour noted"),
        ("22 Nov 2026, 9.30 pm", "2026-11-22T21:30", "Sunday 22 November 2026, 21:30"),
        ("22 Nov 2026, 9.30", "", ""),
        ("3/11/2026", "", ""),
        ("2026-11-22 21:15", "2026-11-22T21:15", "Sunday 22 November 2026, 21:15"),
    ],
)
def test_log_takes_a_day_as_people_write_it_and_notes_no_hour_of_its_own(
    run, folder, date, day, words
):
    code, out, _ = log(run, folder, **{"--date": date})
    shelf = Shelf(folder)
    assert [one.day for one in appearances.of_card(shelf, "major-09")] == [day] * bool(day)
    shelf.close()
    assert (code, words in out) == (0 if day else 2, bool(words) or not out)


def test_log_lays_cards_in_a_spread_of_ones_own(run, folder):
    shelf = Shelf(folder)
    made = replace(spread("three-card"), name="Three stairs")
    spreads.add_spread(shelf, shelf.binder("Foundations"), made)
    shelf.close()
    code, _, err = log(run, folder, **{"--spread": "three-stairs"})
    assert (code, err) == (0, "")
    shelf = Shelf(folder)
    (seen,) = appearances.of_card(shelf, "major-09")
    practice = shelf.binder("Practice")
    assert readings.reading(practice, seen.leaf_uid).spread.name == "Three stairs"
    shelf.close()


@pytest.mark.parametrize(
    ("cards", "more", "sentence"),
    [
        ("3w, hermit r", {}, "three"),
        ("3w, hermit r, qc, kc", {}, "four"),
        ("3w, 3w, qc", {}, "Three of Wands"),
        ("3w, hermyt, qc", {}, "hermyt"),
        ("3w, hermit, qc", {"--spread": "pyramid"}, "pyramid"),
        ("3w, hermit, qc", {"--binder": "Nowhere"}, "Foundations, Practice, Mastery"),
        ("3w, hermit, qc", {"--deck": "Nobody's"}, "no deck called"),
        ("3w, hermit, qc", {"--date": "2026-02-30"}, "2026-02-30"),
    ],
)
def test_what_cannot_be_logged_is_one_sentence(run, folder, cards, more, sentence):
    code, out, err = log(run, folder, cards, **more)
    assert (code, out) == (2, "")
    assert sentence.casefold() in err.casefold()
    assert err.count("\n") == 1


def test_find_prints_leaves_and_json(run, folder):
    log(run, folder)
    code, out, _ = run("find", folder, "quay")
    assert code == 0
    assert "Practice, Readings log: Move to the quay?" in out
    code, out, _ = run("find", folder, "quay", "--json")
    (row,) = json.loads(out)
    assert {key: row[key] for key in ("binder", "tab", "kind", "title")} == {
        "binder": "Practice",
        "tab": "Readings log",
        "kind": "reading",
        "title": "Move to the quay?",
    }
    assert row["line"] == "Three of Wands, The Hermit reversed, Queen of Cups"
    assert row["uid"]


def test_find_of_nothing_is_an_empty_list(run, folder):
    assert json.loads(run("find", folder, "zanzibar", "--json")[1]) == []


def test_check_names_every_file(run, folder):
    code, out, _ = run("check", folder)
    assert code == 0
    for name in ("Foundations", "Practice", "Mastery"):
        assert f"{name}.ringbound: sound" in out


def test_check_exits_1_when_a_file_is_broken(run, folder):
    (folder / "Bad.ringbound").write_text("no database" * 20)
    code, out, _ = run("check", folder)
    assert code == 1
    assert "Bad.ringbound: “Bad.ringbound” is not a Ringbound binder" in out
    assert "1 at fault" in out


def test_a_broken_file_is_named_and_stops_nothing(run, folder):
    (folder / "Bad.ringbound").write_text("no database" * 20)
    code, out, err = log(run, folder)
    assert code == 0
    assert "Bad.ringbound" in err
    code, out, err = run("find", folder, "quay")
    assert (code, "Bad.ringbound" in err, "1 leaf" in out) == (0, True, True)


def test_no_shelf_is_one_sentence(run, tmp_path):
    for command in ("find", "check", "open", "log", "print", "pictures", "calendar"):
        extra = {
            "find": ["x"],
            "log": ["--binder", "B", "--spread", "one-card", "--question", "Q", "3w"],
            "print": ["--binder", "B", "--tab", "T", "--out", tmp_path / "x.pdf"],
            "pictures": ["--out", tmp_path],
            "calendar": ["--out", tmp_path / "x.ics"],
        }.get(command, [])
        code, out, err = run(command, tmp_path / "nowhere", *extra)
        assert (code, out) == (2, "")
        assert err.count("\n") == 1


def test_a_misspelt_command_is_one_sentence_and_exit_2(run, folder):
    code, out, err = run("prnt", folder)
    assert (code, out, err.count("\n")) == (2, "", 1)


def test_print_writes_a_pdf(run, folder, tmp_path):
    log(run, folder)
    out_file = tmp_path / "log.pdf"
    code, out, err = run(
        "print", folder, "--binder", "practice", "--tab", "readings log", "--out", out_file,
        "--paper", "letter", "--holes", "3", "--two-sided",
    )  # fmt: skip
    assert (code, err) == (0, "")
    assert out_file.read_bytes()[:5] == b"%PDF-"
    assert "pages" in out


def test_print_of_holes_that_do_not_fit_is_one_sentence(run, folder, tmp_path):
    log(run, folder)
    code, _, err = run(
        "print", folder, "--binder", "Practice", "--tab", "Readings log",
        "--out", tmp_path / "x.pdf", "--paper", "a5", "--holes", "4",
    )  # fmt: skip
    assert (code, err.count("\n")) == (2, 1)
    assert not (tmp_path / "x.pdf").exists()


def test_a5_alone_has_holes_that_fit(run, folder, tmp_path):
    log(run, folder)
    options = ("--binder", "Practice", "--tab", "Readings log", "--paper", "a5")
    assert run("print", folder, *options, "--out", tmp_path / "x.pdf")[0] == 0
    for paper in ("a4", "letter", "a5"):
        out = tmp_path / f"{paper}.pdf"
        assert run("sheets", "--kind", "ruled", "--paper", paper, "--out", out)[0] == 0


def test_a_log_is_printed_oldest_first_unless_the_newest_is_wanted(run, folder, tmp_path):
    for day in ("2026-07-02", "2026-07-01"):
        log(run, folder, **{"--date": day, "--question": f"On {day}?"})
    options = ("--binder", "Practice", "--tab", "Readings log", "--out", tmp_path / "x.pdf")
    for extra, first in (((), "2026-07-01"), (("--newest-first",), "2026-07-02")):
        assert run("print", folder, *options, *extra, "--replace")[0] == 0
        words = "".join(texts((tmp_path / "x.pdf").read_bytes()))
        assert re.findall(r"On(2026-07-0.)\?", words)[0] == first
        assert ("newestfirst" in words) == bool(extra)


def test_the_new_binders_have_the_tabs_of_a_course(folder):
    shelf = Shelf(folder)
    assert [t.name for t in tabs.tabs(shelf.binder("Practice"))][:3] == [
        "Course plan",
        "Methods",
        "Readings log",
    ]
    shelf.close()


def test_calendar_writes_what_is_due(run, folder, tmp_path):
    out = tmp_path / "due.ics"
    assert run("calendar", folder, "--out", out) == (0, f"Wrote 8 entries to {out}.\n", "")
    assert b"Wands" not in out.read_bytes()
    assert run("calendar", folder, "--out", out, "--with-words", "--replace")[0] == 0
    assert b"SUMMARY:Unit 4: Wands" in out.read_bytes()
    assert run("calendar", folder, "--out", tmp_path / "none" / "due.ics")[0] == 2


def test_print_can_leave_out_what_is_private(run, folder, tmp_path):
    log(run, folder, **{"--text": "Private: of the quay.\n\nOpen water."})
    pages = {}
    for name, extra in (("all", []), ("less", ["--leave-out", "querents", "private"])):
        out = tmp_path / f"{name}.pdf"
        options = ("--binder", "practice", "--tab", "readings log", "--out", out, *extra)
        assert run("print", folder, *options)[0] == 0
        pages[name] = "".join(texts(out.read_bytes()))
    assert "ofthequay" in pages["all"]
    assert "ofthequay" not in pages["less"]
    assert "Openwater." in pages["less"]


def test_sources_are_carried_in_and_out(run, folder, tmp_path):
    file = tmp_path / "in.bib"
    file.write_text("@book{orme, title={Tides}, year=1931}\n@book{x, year=1950}\n")
    code, out, err = run("sources", folder, "--import", file)
    assert (code, out) == (0, f"Brought in 1 source from {file}.\n")
    assert "“orme” has no author" in err
    assert "“x” (line 2) has no title and is left out." in err
    code, out, _ = run("sources", folder, "--export", tmp_path / "out.json")
    assert (code, out) == (0, f"Wrote 1 source to {tmp_path / 'out.json'}.\n")
    assert json.loads((tmp_path / "out.json").read_text())[0]["id"] == "orme"
    code, _, err = run("sources", folder, "--import", tmp_path / "in.odt")
    assert (code, err.count("\n")) == (2, 1)


def test_a_style_of_citing_that_there_is_not(run, folder, tmp_path):
    log(run, folder)
    code, _, err = run(
        "print", folder, "--binder", "Practice", "--tab", "Readings log",
        "--out", tmp_path / "out.pdf", "--citing", "curly",
    )  # fmt: skip
    assert code == 2
    assert "one of these styles" in err


def test_sheets_to_write_on_need_no_shelf(run, tmp_path):
    out = tmp_path / "sheet.pdf"
    code, said, err = run("sheets", "--kind", "reading", "--spread", "horseshoe", "--out", out)
    assert (code, err) == (0, "")
    assert said == f"Wrote 1 page to {out}.\n"
    assert "Horseshoe" in texts(out.read_bytes())[0]
    assert run("sheets", "--kind", "card", "--card", "hermit", "--out", out, "--replace")[0] == 0
    assert "TheHermit" in texts(out.read_bytes())[0]


def test_sheets_of_a_shelf_have_its_decks_titles_and_may_be_two_sided(run, folder, tmp_path):
    out = tmp_path / "sheet.pdf"
    shelf = Shelf(folder)
    titles = replace(STANDARD, own=(("major-17", "The Lantern"),))
    decks.add_deck(shelf, shelf.binders[0], "Kitchen", titles)
    shelf.close()
    words = ("sheets", "--kind", "card", "--card", "star", "--shelf", folder, "--two-sided")
    assert run(*words, "--copies", "2", "--out", out)[0] == 0
    assert "TheLantern" in texts(out.read_bytes())[0]
    code, _, err = run("sheets", "--kind", "plain", "--shelf", tmp_path / "none", "--out", out)
    assert (code, err.count("\n")) == (2, 1)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--kind", "card", "--card", "hermit, star"), "more than one card"),
        (("--kind", "reading", "--spread", "pile"), "pile"),
        (("--kind", "month", "--month", "May"), "no month"),
        (("--kind", "plain", "--holes", "4", "--paper", "a5"), "do not fit"),
    ],
)
def test_sheets_that_cannot_be_made_are_refused(run, tmp_path, words, said):
    code, _, err = run("sheets", *words, "--out", tmp_path / "x.pdf")
    assert code == 2
    assert said in err
    assert err.count("\n") == 1


def test_what_is_left_out_is_not_in_any_file(run, folder, tmp_path):
    shelf = Shelf(folder)
    binder = shelf.binder("Practice")
    made = NewReading(
        "2026-11-22T19:30", "Will Ada Quill move?", spread("one-card"), [Laid(1, "cups-13")],
        text="Private: x9", querent="Ada Quill",
    )  # fmt: skip
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), made)
    lookbacks.expect(binder, uid, "Private: secret.", 70, "2099-12-20")
    source = leaves.add_leaf(
        binder, tabs.first_of_kind(binder, "sources"), "A book", kind=LeafKind.SOURCE
    )
    sources.set_source(binder, source, "book", {"type": "book", "note": "Private: secret."})
    shelf.close()
    files = {
        "print": (tmp_path / "log.pdf", ["--binder", "Practice", "--tab", "Readings log", "--out"]),
        "calendar": (tmp_path / "due.ics", ["--with-words", "--out"]),
        "sources": (tmp_path / "sources.json", ["--export"]),
    }
    for command, (out, words) in files.items():
        for left_out in ((), ("--leave-out", "querents", "private")):
            assert run(command, folder, *words, out, *left_out, "--replace")[0] == 0
            said = "".join(texts(out.read_bytes())) if command == "print" else out.read_text()
            assert any(name in said for name in ("secret", "Ada", "x9")) is not bool(left_out)


def test_find_gives_all_or_so_many_as_are_asked_for(run, folder):
    for _ in range(3):
        log(run, folder)
    code, out, _ = run("find", folder, "quay", "--most", "2")
    assert code == 0
    assert out.splitlines()[-1] == "2 leaves found. There are more."
    assert run("find", folder, "quay")[1].splitlines()[-1] == "3 leaves found."
    code, _, err = run("find", folder, "quay", "--most", "0")
    assert code == 2
    assert "from 1 on" in err


OUT_COMMANDS = {
    "print": ("--binder", "Practice", "--tab", "Readings log", "--out"),
    "bibliography": ("--binder", "Practice", "--tab", "Readings log", "--bibliography", "--out"),
    "calendar": ("--out",),
    "sheets": ("--kind", "ruled", "--out"),
    "sources": ("--export",),
}


def out_words(name, folder, out):
    command = "print" if name == "bibliography" else name
    shelf = () if name == "sheets" else (folder,)
    return (command, *shelf, *OUT_COMMANDS[name], out)


@pytest.mark.parametrize("name", OUT_COMMANDS)
def test_no_command_writes_over_a_binder_or_anything_else(run, folder, tmp_path, name):
    log(run, folder)
    practice = folder / "Practice.ringbound"
    diary = tmp_path / "diary.bib"
    diary.write_text("Dear diary")
    (tmp_path / "linked.pdf").symlink_to(diary)
    before = {path: path.read_bytes() for path in (practice, diary)}
    for out in (practice, diary, tmp_path, tmp_path / "linked.pdf", "", "/"):
        for more in ((), ("--replace",)):
            code, said, err = run(*out_words(name, folder, out), *more)
            assert code == 2, (out, said)
            assert len(err.strip().splitlines()) == 1
    assert {path: path.read_bytes() for path in before} == before
    assert run("check", folder)[0] == 0


def test_a_file_is_written_over_only_where_that_is_asked_for(run, folder, tmp_path):
    log(run, folder)
    out = tmp_path / "log.pdf"
    words = out_words("print", folder, out)
    assert run(*words)[0] == 0
    first = out.read_bytes()
    code, _, err = run(*words)
    assert code == 2
    assert "there already; choose another name, or add --replace" in err
    assert out.read_bytes() == first
    log(run, folder)
    assert run(*words, "--replace")[0] == 0
    assert out.read_bytes() != first


@pytest.mark.parametrize(
    "words",
    [
        ["print", "SHELF", "--binder=--", "--tab=Clippings", "--out=x.pdf"],
        ["find", "/tmp/" + "d/" * 3000, "word"],
        ["check", "/tmp/" + "d" * 300],
        ["print", "SHELF", "--binder=Practice", "--tab=Clippings", "--out="],
        ["calendar", "SHELF", f"--out={'n' * 400}.ics"],
        ["new", "/tmp/" + "n" * 300],
    ],
    ids=["two dashes", "deep", "long", "no name", "long file", "long course"],
)
def test_what_no_file_can_be_called_is_one_sentence(run, folder, words):
    code, out, said = run(*[str(folder) if word == "SHELF" else word for word in words])
    assert code == 2
    assert out == ""
    assert len(said.splitlines()) == 1
    assert said.startswith(("“", "There is no", "The folder “"))
    assert said.rstrip().endswith(".")

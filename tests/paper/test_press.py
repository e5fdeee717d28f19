"""The typesetter in a process of its own: what it sets, how it is stopped, what its end is.

What a process is told and answers lies in files, so a stranger's process can stand in its place.
"""

import os
import subprocess
import sys
import threading

import pytest

from binder.errors import CanMend, OwnFault
from binder.paper import press
from binder.paper.sheets import Sheet
from binder.paper.typeset import from_template, typeset
from tests.paper import sample

SHEET = Sheet("a4", "2")


def test_pages_come_back_from_the_process(tmp_path):
    (pdf,) = press.run(tmp_path, "Hello", format="pdf")
    assert pdf.startswith(b"%PDF-")
    pictures = press.run(tmp_path, "#pagebreak()\nTwo", format="png", ppi=20.0)
    assert [one[:4] for one in pictures] == [b"\x89PNG"] * 2


def test_a_fault_is_told_apart_from_an_end(tmp_path):
    with pytest.raises(press.NotSet, match="unknown variable"):
        press.run(tmp_path, "#nobody", format="pdf")


def test_what_is_stopped_says_so_and_leaves_no_process(tmp_path):
    asked = []

    def stop():
        asked.append(threading.get_ident())
        return len(asked) > 2

    endless = "#for a in range(9000) { for b in range(9000) { let c = calc.sin(a * b) } }"
    with press.until(stop), pytest.raises(CanMend, match="as you stopped it"):
        press.run(tmp_path, endless, format="pdf")
    assert asked
    with pytest.raises(ChildProcessError):
        os.waitpid(-1, os.WNOHANG)


def test_a_stop_holds_only_within():
    with press.until(lambda: True):
        pass
    assert typeset(sample.section(sample.reading()), SHEET).startswith(b"%PDF-")


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.parametrize(
    ("code", "why"),
    [
        ("import os; os.kill(os.getpid(), 9)", "signal 9"),
        ("exit(3)", "code 3"),
    ],
)
def test_a_process_that_ends_by_itself_is_one_sentence(monkeypatch, tmp_path, code, why):
    began = subprocess.Popen

    def other(_command, **how):
        return began([sys.executable, "-c", code], **how)

    monkeypatch.setattr(subprocess, "Popen", other)
    with pytest.raises(CanMend, match=rf"ended by itself \({why}\).*print fewer leaves") as said:
        press.run(tmp_path, "Hello", format="pdf")
    assert not isinstance(said.value, OwnFault)


def test_setting_leaves_nothing_in_this_process():
    """The typesetter is not so much as imported where pages are asked for."""
    code = (
        "import sys\n"
        "from binder.paper.sheets import Sheet\n"
        "from binder.paper.typeset import typeset\n"
        "from tests.paper import sample\n"
        "assert typeset(sample.section(sample.reading()), Sheet('a4', '2'))\n"
        "assert 'typst' not in sys.modules, 'typst'\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=press.ROOT)


def test_other_templates_go_the_same_way():
    with press.until(lambda: True), pytest.raises(CanMend, match="stopped"):
        from_template("year.typ", {})

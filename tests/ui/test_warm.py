"""What pages need is fetched while nothing else is done."""

import subprocess
import sys

from PySide6.QtCore import QObject

from ui.leaves.pages import PAGES
from ui.warm import Warm

SCRIPT = """
import sys
from ui.warm import Warm, _portions
early = [name for name in {names} if name in sys.modules]
for portion in list(_portions(None))[:-1]:
    portion()
print(early, [name for name in {names} if name not in sys.modules])
"""


def test_every_page_is_fetched_and_none_before_its_turn():
    names = sorted({module for module, _ in PAGES.values()})
    script = SCRIPT.format(names=names)
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert ran.stdout == "[] []\n"


def test_it_is_gone_when_all_is_fetched(qtbot, session):
    parent = QObject()
    warm = Warm(session, parent)
    with qtbot.waitSignal(warm.destroyed, timeout=10_000):
        pass
    assert parent.children() == []
    parent.deleteLater()

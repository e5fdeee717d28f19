"""An answer is on disk once its verb returns: a program killed then loses nothing."""

import os
import signal
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

from binder.store.file import check
from binder.store.shelf import Shelf
from binder.study.cards import words
from binder.study.recall import answers

ROOT = Path(__file__).resolve().parent.parent.parent.parent
KILLED = """
import os, signal, sys
from datetime import UTC, datetime
from pathlib import Path
from binder.reckon.memory import Answer
from binder.store.shelf import Shelf
from binder.study.recall import answers, recall
at = datetime(2026, 3, 2, 19, tzinfo=UTC)
shelf = Shelf(Path(sys.argv[1]))
for question in recall.make_round(shelf, at).questions[:3]:
    answers.answer(question, Answer.KNEW_IT, at)
print("answered", flush=True)
os.kill(os.getpid(), signal.SIGTERM if os.name == "nt" else signal.SIGKILL)
"""


def test_killed_right_after_an_answer_loses_nothing(course_shelf, tmp_path):
    for key in ("major-00", "major-01", "major-02"):
        words.write_words(*course_shelf.card_leaf(key), "upright", f"Words about {key}.")
    folder = course_shelf.path
    course_shelf.close()
    done = subprocess.run(
        [sys.executable, "-c", KILLED, str(folder)], cwd=ROOT, capture_output=True, text=True,
        check=False,
    )  # fmt: skip
    assert done.stdout == "answered\n"
    assert os.name == "nt" or done.returncode == -signal.SIGKILL
    after = Shelf(folder)
    kept = answers.memories(after, datetime(2026, 3, 2, 20, tzinfo=UTC))
    paths = [binder.path for binder in after.binders]
    after.close()
    assert len(kept) == 3
    assert [check(path) for path in paths] == [[]] * len(paths)

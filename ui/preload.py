"""Imported first of all, so that the first leaf is there sooner.

Loads what that leaf needs and has no screen. Of every module imported after it PySide6 reads the
whole source, to see whether it is mentioned there; with peewee and its like that comes to a tenth
of the time to the first leaf.

Meanwhile the garbage collector rests: what start-up makes stays, and looking through it takes time.
`ui.app` has it go on.
"""

import gc
from importlib import import_module

_COLLECTING = gc.isenabled()
_FIRST = (
    "tomllib", "fontpkg_vollkorn", "platformdirs", "uharfbuzz", "binder.cards.facts",
    "binder.store.shelf", "binder.study.course.course", "binder.study.dates",
    "binder.study.leaves.leaves", "binder.study.overview.moving", "binder.study.leaves.tabs",
    "binder.study.cards.words",
)  # fmt: skip

gc.disable()
for name in _FIRST:
    import_module(name)


def collect_again() -> None:
    """Have the collector go on, past all that was made so far."""
    gc.freeze()
    if _COLLECTING:
        gc.enable()

"""What the first leaf needs and has no screen, for ui.app to import before PySide6.

Of every module imported after it PySide6 reads the whole source, to see whether it is mentioned
there; with peewee and its like that comes to a tenth of the time to the first leaf.
"""

import tomllib

import fontpkg_vollkorn
import platformdirs
import uharfbuzz

from binder.cards import facts
from binder.store import shelf
from binder.study import dates
from binder.study.cards import words
from binder.study.course import course
from binder.study.leaves import leaves, tabs
from binder.study.overview import moving

__all__ = [
    "course", "dates", "facts", "fontpkg_vollkorn", "leaves", "moving", "platformdirs", "shelf",
    "tabs", "tomllib", "uharfbuzz", "words",
]  # fmt: skip

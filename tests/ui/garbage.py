"""What Python's garbage collector would destroy of Qt's."""

import gc
from contextlib import contextmanager

import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent, QObject


@contextmanager
def nothing_left_to_the_collector():
    """Fails if a Qt object that only Python owns became garbage meanwhile.

    The collector destroys those on whichever thread it happens to run, and in the middle of
    whatever runs there. An object with a parent, or told to delete itself, is Qt's.
    """
    gc.collect()
    gc.set_debug(gc.DEBUG_SAVEALL)
    try:
        yield
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        gc.collect()
        left = sorted(type(one).__name__ for one in gc.garbage if _dies_with_python(one))
    finally:
        gc.set_debug(0)
        gc.garbage.clear()
    assert left == [], left


def _dies_with_python(one):
    return isinstance(one, QObject) and shiboken6.isValid(one) and shiboken6.ownedByPython(one)

"""Leaves of handouts for tests: files made by other libraries, and a page that shows them."""

import io

import pytest
from PIL import Image
from pypdf import PdfWriter
from PySide6.QtWidgets import QApplication

from binder.study.leaves import files, leaves, tabs
from ui.leaves.handout.handout import HandoutPage


def pdf_of(*sizes, password=""):
    writer = PdfWriter()
    for width, height in sizes:
        writer.add_blank_page(width, height)
    if password:
        writer.encrypt(password)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def png(width, height, colour=(160, 40, 40)):
    out = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(out, "PNG")
    return out.getvalue()


@pytest.fixture
def show(session, look, lay, qtbot):
    """Shows a handout leaf with those files: (name, media, data)."""
    practice = session.shelf.binder("Practice")

    def shown(*kept, text="Notes of **mine**.", missing=False):
        links = []
        for name, media, data in kept:
            uid = files.keep_bytes(practice, name, media, data)
            links.append(f"[{name} said](file:{uid})")
        if missing:
            links.append("![the lost map](file:no-such-uid)")
        body = "\n\n".join([*links, text])
        home = tabs.tab(practice, "Clippings")
        uid = leaves.add_leaf(practice, home, "A sheet", body, kind="handout", day="2026-05-16")
        page = lay(HandoutPage(session, look), session.spot_of(uid))
        settle(qtbot, page)
        return page

    return shown


def settle(qtbot, page):
    """Until nothing is read or drawn any more and the results have come."""
    for _ in range(3):
        page.wait()
        QApplication.processEvents()

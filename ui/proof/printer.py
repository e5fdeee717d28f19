"""Pages handed to a printer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSizeF
from PySide6.QtGui import QPageSize, QPainter

from binder.paper.sheets import Sheet
from ui.proof.pages import Paper

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

DPI = 300


def printer_for(sheet: Sheet) -> QPrinter:
    """The usual printer, set to a sheet's paper and sides."""
    from PySide6.QtPrintSupport import QPrinter

    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setResolution(DPI)
    printer.setPageSize(page_size(sheet))
    printer.setFullPage(True)
    sides = QPrinter.DuplexMode
    printer.setDuplex(sides.DuplexLongSide if sheet.two_sided else sides.DuplexNone)
    return printer


def page_size(sheet: Sheet) -> QPageSize:
    """The paper as printers know it: the standard size of those measures, where there is one."""
    millimetre = QPageSize.Unit.Millimeter
    return QPageSize(QSizeF(sheet.size.width, sheet.size.height), millimetre, sheet.size.words)


def draw_on(printer: QPrinter, paper: Paper) -> bool:
    """Draw every page; False if the printer does not answer."""
    painter = QPainter()
    if not painter.begin(printer):
        return False
    for page in range(paper.printed.pages):
        if page:
            printer.newPage()
        area = painter.viewport()
        painter.drawImage(area, paper.drawn(page, area.width()))
    painter.end()
    return True

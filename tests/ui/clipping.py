"""Looks for controls that are too small for their own words."""

from collections.abc import Iterator

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QTextDocumentFragment
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QCheckBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QToolButton,
    QWidget,
)

from ui.desk.dividers import Divider

SLACK = 2
"""Pixels that rounding may take."""


def clipped(root: QWidget) -> Iterator[str]:
    """A line for each visible control of a window that cannot show its words whole."""
    for each in root.findChildren(QWidget):
        if each.isVisibleTo(root) and each.window() is root:
            fault = _too_small(each) or _cut_off(each)
            if fault:
                yield f"{type(each).__name__} “{_words(each)[:60]}”: {fault}"


def _words(widget: QWidget) -> str:
    for name in ("text", "currentText", "placeholderText"):
        said = getattr(widget, name, None)
        words = said() if callable(said) and not isinstance(said, QWidget) else ""
        if words:
            return str(words)
    return widget.accessibleName() or widget.objectName()


def _too_small(widget: QWidget) -> str:
    if isinstance(widget, QLabel):
        return _label(widget)
    if isinstance(widget, QPushButton | QCheckBox | QRadioButton) and widget.text():
        return _less(widget.size(), widget.sizeHint())
    if isinstance(widget, QToolButton):
        shown = widget.toolButtonStyle() != Qt.ToolButtonStyle.ToolButtonIconOnly
        return _less(widget.size(), _of_words(widget, widget.text())) if shown else ""
    if isinstance(widget, QLineEdit):
        return _field(widget)
    if isinstance(widget, QComboBox):
        needed = widget.fontMetrics().horizontalAdvance(widget.currentText())
        if needed > widget.width() - widget.height() // 2:
            return f"words {needed} wide in {widget.width()}"
        return _less(QSize(widget.width(), widget.height()), QSize(0, widget.sizeHint().height()))
    return ""


def _less(size: QSize, needed: QSize) -> str:
    if size.width() + SLACK < needed.width() or size.height() + SLACK < needed.height():
        return f"{size.toTuple()} where {needed.toTuple()} is needed"
    return ""


def _label(label: QLabel) -> str:
    if not label.text():
        return ""
    room = label.contentsRect().size()
    if label.wordWrap():
        needed = label.heightForWidth(label.width())
        return f"{label.height()} high, {needed} needed" if label.height() + SLACK < needed else ""
    if "…" in label.text():
        return ""  # shortened on purpose
    plain = QTextDocumentFragment.fromHtml(label.text()).toPlainText()
    return _less(room, _of_words(label, plain.replace("&", "") if label.buddy() else plain))


def _of_words(widget: QWidget, words: str) -> QSize:
    metrics, lines = widget.fontMetrics(), words.splitlines() or [""]
    return QSize(max(map(metrics.horizontalAdvance, lines)), metrics.height() * len(lines))


def _field(field: QLineEdit) -> str:
    metrics = field.fontMetrics()
    if field.height() < metrics.height():
        return f"{field.height()} high for letters of {metrics.height()}"
    needed = metrics.horizontalAdvance(field.placeholderText())
    if not field.text() and needed > field.contentsRect().width():
        return f"hint {needed} wide in {field.contentsRect().width()}"
    return ""


def _cut_off(widget: QWidget) -> str:
    """Whether it reaches out of what holds it; what lies in something that scrolls may."""
    holder = widget.parentWidget()
    if (
        holder is None
        or not _words(widget)
        or not isinstance(widget, QLabel | QAbstractButton | QLineEdit | QComboBox)
    ):
        return ""
    if isinstance(widget, Divider):
        return ""  # they lie in a strip that is moved along
    above = holder.parentWidget()
    if isinstance(above, QAbstractScrollArea) and above.viewport() is holder:
        return ""
    if not holder.rect().adjusted(-SLACK, -SLACK, SLACK, SLACK).contains(widget.geometry()):
        return f"{_at(widget.geometry())} outside of {_at(holder.rect())}"
    return ""


def _at(rect: QRect) -> str:
    return f"{rect.getRect()}"

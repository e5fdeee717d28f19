"""The style sheet of standard controls, filled in with the colours of a theme."""

from collections.abc import Mapping
from string import Template

_SHEET = Template("""
QPushButton, QToolButton[plain="true"] {
  background: $slip; color: $ink; border: 1px solid $line; border-radius: 3px;
  padding: ${p5}px ${p16}px; margin: 0;
}
QPushButton:hover, QToolButton[plain="true"]:hover { background: $faint; }
QPushButton:pressed, QToolButton[plain="true"]:pressed { background: $band; }
QPushButton:checked, QToolButton[plain="true"]:checked,
QPushButton:default, QPushButton[main="true"] {
  background: $ink; color: $paper; border-color: $ink;
}
QPushButton:focus, QToolButton[plain="true"]:focus {
  border: 2px solid $own; padding: ${p4}px ${p15}px;
}
QPushButton:checked:focus, QToolButton[plain="true"]:checked:focus,
QPushButton:default:focus, QPushButton[main="true"]:focus {
  border: 5px double $own; background: $ink; background-clip: padding;
  padding: ${ring_y}px ${ring_x}px;
}
QPushButton:disabled, QToolButton[plain="true"]:disabled {
  color: $inksoft; background: $paper; border-color: $rule;
}
QToolButton[plain="true"]::menu-indicator { image: none; }
QToolButton[arrow="true"] {
  background: $slip; color: $ink; border: 1px solid $line; border-radius: 3px;
}
QToolButton[arrow="true"]:focus { border: 2px solid $own; }
QLineEdit {
  background: $slip; color: $ink; border: 1px solid $line; border-radius: 3px;
  padding: ${p4}px ${p10}px; placeholder-text-color: $inksoft;
  selection-background-color: $own; selection-color: $paper;
}
QLineEdit:focus { border: 2px solid $own; padding: ${p3}px ${p9}px; }
QComboBox, QAbstractSpinBox, QPlainTextEdit, QTextEdit {
  background: $slip; color: $ink; border: 1px solid $line; border-radius: 3px;
  padding: ${p3}px ${p6}px; placeholder-text-color: $inksoft;
  selection-background-color: $own; selection-color: $paper;
}
QComboBox:focus, QAbstractSpinBox:focus, QPlainTextEdit:focus, QTextEdit:focus {
  border: 2px solid $own;
}
QLineEdit:disabled, QComboBox:disabled, QAbstractSpinBox:disabled, QPlainTextEdit:disabled,
QTextEdit:disabled { color: $inksoft; background: $paper; border-color: $rule; }
QComboBox::drop-down { border: none; width: ${p24}px; }
QComboBox::down-arrow, QAbstractSpinBox::down-arrow {
  image: url("$icons/down-$theme.svg"); width: ${p10}px; height: ${p10}px;
}
QAbstractSpinBox::up-arrow {
  image: url("$icons/up-$theme.svg"); width: ${p10}px; height: ${p10}px;
}
QComboBox QAbstractItemView { border: 1px solid $line; }
QAbstractSpinBox { padding-left: ${p6}px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {
  background: transparent; border: none; width: ${p24}px;
}
QAbstractSpinBox::up-button:hover, QAbstractSpinBox::down-button:hover { background: $faint; }
QCheckBox::indicator, QRadioButton::indicator, QGroupBox::indicator,
QAbstractItemView::indicator {
  width: ${p13}px; height: ${p13}px; border: 1px solid $line; background: $slip;
}
QPushButton, QCheckBox, QRadioButton { outline: none; }
QCheckBox, QRadioButton { border: 1px solid transparent; border-radius: 3px; }
QCheckBox:focus, QRadioButton:focus { border-color: $own; }
QDialogButtonBox, QMessageBox { dialogbuttonbox-buttons-have-icons: 0; }
QRadioButton::indicator { border-radius: ${p7}px; }
QCheckBox::indicator:checked, QRadioButton::indicator:checked, QGroupBox::indicator:checked,
QAbstractItemView::indicator:checked {
  background: $own; border-color: $own; image: url("$icons/tick-$theme.svg");
}
QRadioButton::indicator:checked { image: url("$icons/dot-$theme.svg"); }
QCheckBox::indicator:focus, QRadioButton::indicator:focus {
  border: 2px solid $own; width: ${focused}px; height: ${focused}px;
}
QMenuBar { background: $bar; color: $ink; }
QMenuBar::item { padding: ${p4}px ${p10}px; background: transparent; }
QMenuBar::item:selected { background: $slip; }
QMenu { background: $slip; color: $ink; border: 1px solid $line; padding: ${p4}px 0; }
QMenu::item { padding: ${p5}px ${p28}px ${p5}px ${p24}px; }
QMenu::item:selected { background: $own; color: $paper; }
QMenu::item:disabled { color: $inksoft; }
QMenu::separator { height: 1px; background: $rule; margin: ${p4}px ${p10}px; }
QDialog, QMessageBox { background: $paper; }
QToolTip { background: $slip; color: $ink; border: 1px solid $line; padding: ${p3}px ${p6}px; }
QListView, QTreeView, QTableView {
  background: $slip; color: $ink; border: 1px solid $rule;
  alternate-background-color: $faint;
}
QListView::item { padding: ${p3}px ${p6}px; }
QListView::item:selected { background: $own; color: $paper; }
QHeaderView { background: $slip; border: none; }
QHeaderView::section {
  background: $slip; color: $inksoft; border: none; border-bottom: 1px solid $rule;
  padding: ${p3}px ${p6}px;
}
QTableView::item { padding: 0 ${p6}px; }
QTabWidget::pane { background: $slip; border: 1px solid $rule; }
QTabBar::tab {
  background: $faint; color: $ink; border: 1px solid $rule; padding: ${p4}px ${p14}px;
}
QTabBar::tab:selected { background: $slip; border-bottom-color: $slip; }
QTabBar::tab:focus { border: 2px solid $own; }
QScrollArea, QTextBrowser[leaf="true"], QPlainTextEdit[leaf="true"], QTextEdit[leaf="true"],
QTextBrowser[leaf="true"]:focus, QPlainTextEdit[leaf="true"]:focus, QTextEdit[leaf="true"]:focus {
  background: transparent; border: none; padding: 0;
}
QScrollBar:vertical { background: transparent; width: 11px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 11px; margin: 0; }
QScrollBar::handle { background: $line; border-radius: 3px; margin: 2px; }
QScrollBar::handle:vertical { min-height: 32px; }
QScrollBar::handle:horizontal { min-width: 32px; }
QScrollBar::handle:hover { background: $inksoft; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
""")


def style_sheet(theme: str, colours: Mapping[str, str], scale: float, icons: str) -> str:
    """The sheet for a theme's name and colours by palette key; paddings grow with the scale.

    `icons` is the folder of the arrows and ticks, written with forward slashes.
    """
    steps = {f"p{n}": round(n * scale) for n in (3, 4, 5, 6, 7, 9, 10, 13, 14, 15, 16, 24, 28)}
    steps["focused"] = steps["p13"] - 2  # a thicker border, and no more room
    steps["ring_y"], steps["ring_x"] = steps["p5"] - 4, steps["p16"] - 4
    return _SHEET.substitute(colours, theme=theme, icons=icons, **steps)

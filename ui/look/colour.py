"""Arithmetic on colours: how far apart two of them are, and how to bring them far enough."""

from PySide6.QtGui import QColor


def luminance(colour: QColor) -> float:
    """Relative luminance, 0 (black) to 1 (white), as WCAG 2.2 defines it."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    red, green, blue = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: QColor, other: QColor) -> float:
    """Contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def mix(one: QColor, other: QColor, share: float) -> QColor:
    """The colour `share` (0 to 1) of the way from `one` to `other`."""
    return QColor.fromRgbF(
        one.redF() + (other.redF() - one.redF()) * share,
        one.greenF() + (other.greenF() - one.greenF()) * share,
        one.blueF() + (other.blueF() - one.blueF()) * share,
    )


def apart(start: QColor, towards: QColor, grounds: list[QColor], ratio: float) -> QColor:
    """The first colour on the way from `start` to `towards` that keeps `ratio` to every ground.

    `towards` itself comes back when nothing before it does.
    """
    for step in range(0, 101, 2):
        colour = mix(start, towards, step / 100)
        if all(contrast(colour, ground) >= ratio for ground in grounds):
            return colour
    return towards


def faded(colour: QColor, alpha: float) -> QColor:
    """A copy of the colour with the given opacity, 0 to 1."""
    copy = QColor(colour)
    copy.setAlphaF(alpha)
    return copy

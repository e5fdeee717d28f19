"""The colours offered for spines and dividers, and what they are called."""

SPINES = {
    "spineF": "Ochre", "spineP": "Sea green", "spineM": "Plum", "major": "Violet",
    "cups": "Blue", "pents": "Moss", "swords": "Slate", "wands": "Rust",
}  # fmt: skip
"""Palette key -> word."""
TABS = {
    "tabCourse": "Straw", "tabMajor": "Clay", "tabMinor": "Sage", "tabRead": "Paper",
    "tabClip": "Mist",
}  # fmt: skip
"""Palette key -> word."""

"""The faces of the cards: drawn by our own code as SVG, alike on screen and on paper.

Words are set in Vollkorn at weight 600; figures are shapes and need no font.
"""

from binder.cards.faces.cards import RATIO, TALL, WIDE, face_body, face_svg
from binder.cards.faces.pictured import picture_body
from binder.cards.faces.small import back_svg, emblem_svg, small_face_svg, suit_emblem_svg

__all__ = [
    "RATIO",
    "TALL",
    "WIDE",
    "back_svg",
    "emblem_svg",
    "face_body",
    "face_svg",
    "picture_body",
    "small_face_svg",
    "suit_emblem_svg",
]

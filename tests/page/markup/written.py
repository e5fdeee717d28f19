"""PDFs with words, made by another library than the one that reads them in the program."""

import typst


def written(*pages):
    """A PDF with a page for each of these words."""
    body = "\n#pagebreak()\n".join(pages)
    setting = '#set page(width: 300pt, height: 400pt)\n#set text(lang: "en")\n'
    return typst.compile((setting + body).encode(), format="pdf")

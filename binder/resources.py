"""Where the files that come with the program lie."""

from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
"""What holds binder/, ui/, resources/ and sample_binders/, in a checkout or installed."""


def resource(*parts: str) -> Path:
    """Path of a file in resources/, as `resource('themes', 'day.toml')`."""
    return ROOT.joinpath("resources", *parts)


def samples() -> Path:
    """Path of sample_binders/, the readable text sources of the sample shelf."""
    return ROOT / "sample_binders"

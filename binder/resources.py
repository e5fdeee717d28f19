"""Where the files that come with the program lie, and which version of it this is."""

from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
"""What holds binder/, ui/, resources/ and sample_binders/, in a checkout or installed."""


def resource(*parts: str) -> Path:
    """Path of a file in resources/, as `resource('themes', 'day.toml')`."""
    return ROOT.joinpath("resources", *parts)


def samples() -> Path:
    """Path of sample_binders/, the readable text sources of the sample shelf."""
    return ROOT / "sample_binders"


def version() -> str:
    """The program's version, as `0.1.0`.

    A checkout is asked first, since an older Ringbound may be installed beside it.
    """
    import tomllib
    from importlib import metadata

    told = ROOT / "pyproject.toml"
    if told.is_file():
        project = tomllib.loads(told.read_text(encoding="utf-8")).get("project", {})
        if project.get("name") == "ringbound":
            return str(project["version"])
    return metadata.version("ringbound")

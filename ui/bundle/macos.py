"""What macOS is told of the program: that it opens binders, and what a binder is."""

from __future__ import annotations

from typing import Any

from binder.store.schema import SUFFIX

IDENTIFIER = "ringbound.program"
TYPE = "ringbound.binder"
"""Names as Apple asks for them, but of no domain, since the project has none."""


def info(version: str) -> dict[str, Any]:
    """The keys of Info.plist beside those that PyInstaller writes by itself."""
    kind = {
        "CFBundleTypeName": "Ringbound binder",
        "CFBundleTypeRole": "Editor",
        "CFBundleTypeIconFile": "512.icns",
        "LSHandlerRank": "Owner",
        "LSItemContentTypes": [TYPE],
    }
    declared = {
        "UTTypeIdentifier": TYPE,
        "UTTypeDescription": "Ringbound binder",
        "UTTypeConformsTo": ["public.data", "public.content"],
        "UTTypeTagSpecification": {"public.filename-extension": [SUFFIX.removeprefix(".")]},
    }
    return {
        "CFBundleDisplayName": "Ringbound",
        "CFBundleExecutable": "ringbound-window",
        "CFBundleShortVersionString": version,
        "CFBundleDocumentTypes": [kind],
        "UTExportedTypeDeclarations": [declared],
        "LSApplicationCategoryType": "public.app-category.education",
        "NSHighResolutionCapable": True,
    }

"""Items and their figures as one content package, a ZIP with a manifest: the same items give the same bytes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from io import BytesIO
from xml.etree.ElementTree import Element, SubElement
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from ...document.passage import Picture
from ...document.untrusted_text import clean
from ..figure.plot import drawn
from .assessment_item import INSTANCE, assessment_item, document
from .item import Item

NAMESPACE = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"
LOM = "http://ltsc.ieee.org/xsd/LOM"
LOM_SCHEMA = "https://purl.imsglobal.org/spec/md/v1p3/schema/xsd/imsmd_loose_v1p3p2.xsd"
ITEM = "imsqti_item_xmlv3p0"  # the type of a resource that is an item
MANIFEST, FOLDER, FIGURES = "imsmanifest.xml", "items", "figures"
_BEGUN = (1980, 1, 1, 0, 0, 0)  # the first time that a ZIP can tell


@dataclass(slots=True)
class _Figures:
    """The figures of one item: files beside it."""

    name: str
    kept: dict[str, bytes] = field(default_factory=dict)

    def put(self, picture: Picture) -> str:
        more = f"-{len(self.kept) + 1}" if self.kept else ""
        place = f"{FIGURES}/{self.name}{more}.svg"
        self.kept[f"{FOLDER}/{place}"] = drawn(picture).encode()
        return place


def files_of(item: Item) -> dict[str, bytes]:
    """The files of one item by their paths in the package, its own first."""
    figures = _Figures(item.name)
    content = assessment_item(item, figures)
    return {f"{FOLDER}/{item.name}.xml": content, **figures.kept}


def package(items: Sequence[tuple[str, Mapping[str, bytes]]], title: str, says: str) -> bytes:
    """Items, each with its name and its files, as one package. `says` stands in the manifest: what a person who opens
    it must know.
    """
    made = BytesIO()
    with ZipFile(made, "w", ZIP_DEFLATED) as archive:
        _put(archive, MANIFEST, _manifest(items, title, says))
        for _, files in items:
            for name, content in files.items():
                _put(archive, name, content)
    return made.getvalue()


def _put(archive: ZipFile, name: str, content: bytes) -> None:
    info = ZipInfo(name, _BEGUN)
    info.compress_type, info.external_attr, info.create_system = ZIP_DEFLATED, 0o644 << 16, 3
    archive.writestr(info, content)


def _manifest(items: Sequence[tuple[str, Mapping[str, bytes]]], title: str, says: str) -> bytes:
    digest = sha256(b"".join(content for _, files in items for content in files.values())).hexdigest()[:16]
    root = Element(
        "manifest",
        {
            "xmlns": NAMESPACE,
            "xmlns:xsi": INSTANCE,
            "xsi:schemaLocation": f"{NAMESPACE} {SCHEMA} {LOM} {LOM_SCHEMA}",
            "identifier": f"package-{digest}",
        },
    )
    about = SubElement(root, "metadata")
    SubElement(about, "schema").text = "QTI Package"
    SubElement(about, "schemaversion").text = "3.0.0"
    general = SubElement(SubElement(about, "lom", {"xmlns": LOM}), "general")
    for name, words in (("title", title), ("description", says)):
        SubElement(SubElement(general, name), "string", {"language": "en"}).text = clean(words)
    SubElement(root, "organizations")
    resources = SubElement(root, "resources")
    for name, files in items:
        resource = SubElement(resources, "resource", {"identifier": name, "type": ITEM, "href": next(iter(files))})
        for place in files:
            SubElement(resource, "file", {"href": place})
    _indent(root)
    return document(root)


def _indent(root: Element) -> None:
    """Line by line, for whoever opens it; no element of a manifest holds text and elements."""
    from xml.etree.ElementTree import indent

    indent(root, " ")

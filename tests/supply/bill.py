"""The bill of materials by the CycloneDX library: the same parts give the same bytes."""

import tomllib
from uuid import NAMESPACE_URL, uuid5

from cyclonedx.contrib.license.factories import LicenseFactory
from cyclonedx.model.bom import Bom
from cyclonedx.model.component import Component, ComponentScope, ComponentType
from cyclonedx.output.json import JsonV1Dot6
from packageurl import PackageURL

from tests.supply.parts import HOME, Part

# Carried in assets/fonts; the version as its name table says it.
LETTERS = Component(
    name="B612", version="1.008", type=ComponentType.FILE, bom_ref="B612",
    licenses=[LicenseFactory().make_from_string("OFL-1.1")],
)  # fmt: skip


def bill(found: list[Part]) -> str:
    """Return the bill of materials as CycloneDX 1.6 in JSON."""
    told = tomllib.loads((HOME / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    program = Component(
        name=told["name"], version=told["version"], type=ComponentType.APPLICATION,
        bom_ref=told["name"], licenses=[LicenseFactory().make_from_string(told["license"])],
    )  # fmt: skip
    components = [*map(component, found), LETTERS]
    made = Bom(components=components)
    made.metadata.component = program
    # Neither the hour nor a dice throw: the number follows from what is told.
    made.metadata.timestamp = None
    made.serial_number = uuid5(NAMESPACE_URL, " ".join(str(part) for part in found))
    made.register_dependency(program, components)
    return JsonV1Dot6(made).output_as_string(indent=1) + "\n"


def component(part: Part) -> Component:
    """Return one package; an extra's is optional."""
    return Component(
        name=part.name, version=part.version, type=ComponentType.LIBRARY, bom_ref=part.url,
        purl=PackageURL(part.kind, None, part.name, part.version),
        licenses=[LicenseFactory().make_from_string(part.licence)],
        scope=ComponentScope.OPTIONAL if part.extra else None,
    )  # fmt: skip

"""The schemas in assets are those of the program, and the examples obey them."""

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.project import Design
from geometry.report import Report, report

ASSETS = Path(__file__).parent.parent / "assets"
EXAMPLES = sorted((ASSETS / "examples").glob("*.toml"))


def published(name: str) -> dict[str, object]:
    schema = json.loads((ASSETS / f"schemas/{name}.schema.json").read_text(encoding="utf-8"))
    assert isinstance(schema, dict)
    return schema


def test_published_schemas_are_current() -> None:
    dialect = {"$schema": "https://json-schema.org/draft/2020-12/schema"}
    assert published("design") == {**dialect, **Design.model_json_schema(by_alias=True)}
    assert published("report") == {**dialect, **Report.schema()}


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_examples_and_their_reports_obey(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    jsonschema.validate(tomllib.loads(text), published("design"))
    made = json.loads(report(lay_out(read_design(text))).to_json())
    jsonschema.validate(made, published("report"))
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**made, "levels": "none"}, published("report"))

"""IFC4: valid, read back by a kernel with the model's own volumes and places, steady GUIDs."""

import numpy as np
import pytest

from geometry.layout.lay import lay_out
from geometry.solids.foundation import build
from tests.viz.export import ifc_read
from tests.whole.networks import network
from viz.carried import examples
from viz.export.ifc import library
from viz.export.ifc.house import to_ifc
from viz.job import job

SMALL = "one side, two outlets"


def written(layout):
    foundation = build(layout)
    return foundation, to_ifc(layout, foundation)


@pytest.fixture(scope="module")
def layout():
    return lay_out(network(SMALL))


@pytest.fixture(scope="module")
def house(layout):
    foundation, data = written(layout)
    return foundation, data, ifc_read.read(data)


def holds(layout, foundation, model):
    """Every solid is there once, as large as it should be, and stated as the report states it."""
    drawn, read = ifc_read.volumes_drawn(layout, foundation), ifc_read.volumes_read(model)
    assert set(read) == set(drawn)
    wrong = {p: (read[p], size) for p, (size, by) in drawn.items() if abs(read[p] - size) > by}
    assert not wrong
    stated = ifc_read.volumes_stated(model)
    assert stated == pytest.approx(ifc_read.volumes_reported(layout, foundation), rel=1e-9)
    return read


def test_valid_and_read_back_with_the_same_volumes(layout, house):
    foundation, _, model = house
    assert ifc_read.faults(model, rules=False) == []
    holds(layout, foundation, model)


@pytest.mark.slow
@pytest.mark.parametrize("name", sorted(examples()))
def test_examples_keep_every_rule_of_the_schema(name):
    work = job(examples()[name].read_text(encoding="utf-8"))
    model = ifc_read.read(to_ifc(work.layout, work.foundation))
    assert ifc_read.faults(model, rules=True) == []
    read = holds(work.layout, work.foundation, model)
    assert read.keys() >= {"sump/basin", "sump/pipe"}


@pytest.mark.slow
@pytest.mark.parametrize("name", ["both to the pit", "both to daylight", "upper to lower stone"])
def test_networks_keep_every_rule_of_the_schema(name):
    laid = lay_out(network(name))
    foundation, data = written(laid)
    model = ifc_read.read(data)
    assert ifc_read.faults(model, rules=True) == []
    holds(laid, foundation, model)
    systems = model.by_type("IfcDistributionSystem")
    assert [s.Name for s in systems] == [d.title for d in laid.drains]


def test_bodies_stand_where_the_solids_stand(house):
    foundation, _, model = house
    solids = {s.label.part: s for s in foundation.solids}
    whole = [e for e in ifc_read.bodies(model) if e.Tag in solids]
    assert {"footing", "basement/slab", "drain/stone", "ground/backfill"} <= {e.Tag for e in whole}
    for element in whole:
        label = solids[element.Tag].label
        if label.role == "lead":
            continue  # a true circle reaches farther than its polygon
        read, drawn = ifc_read.corners(element), solids[element.Tag].vertices
        for side in (np.min, np.max):
            assert side(read, axis=0) == pytest.approx(side(drawn, axis=0), abs=2e-6), label.part


def test_pipes_run_along_the_fall(layout, house):
    """Ends of every run lie on the drain's own way: level at its station, no more aside than it."""
    _, _, model = house
    drain = layout.drains[0]
    runs = [e for e in ifc_read.bodies(model) if ifc_read.part_of(e) == "drain/pipe"]
    straights = [s for stick in drain.sticks for s in stick]
    assert len(runs) == len(straights)
    for run, straight in zip(runs, straights, strict=True):
        points = ifc_read.corners(run)
        inverts = drain.invert(straight.start), drain.invert(straight.end)
        assert points[:, 2].min() == pytest.approx(min(inverts) - drain.pipe.wall_m, abs=1e-3)
        told = ifc_read.sets(run)
        assert told["Bedcourse_Pipe"]["StartInvertFromTopOfFooting"] == pytest.approx(inverts[0])
        elevation = layout.design.datum.top_of_footing + min(inverts)
        assert told["Pset_PipeSegmentOccurrence"]["InvertElevation"] == pytest.approx(elevation)
        ends = np.array([drain.route.at(s) for s in (straight.start, straight.end)])
        reach = drain.radius * 1.001
        assert (points[:, :2].min(axis=0) >= ends.min(axis=0) - reach).all()
        assert (points[:, :2].max(axis=0) <= ends.max(axis=0) + reach).all()
    told = [ifc_read.sets(run)["Bedcourse_Perforation"] for run in runs]
    assert sum(row["Holes"] for row in told) == drain.hole_count
    assert told[0]["HoleDiameter"] == drain.drain.holes.diameter


def test_classes_levels_layers_and_sources(layout, house):
    _, _, model = house
    named = {e.Tag: e for e in ifc_read.bodies(model)}
    area = layout.areas[0]
    slab, retarder = named["basement/slab"], named["basement/retarder"]
    assert (slab.is_a(), slab.PredefinedType) == ("IfcSlab", "BASESLAB")
    assert (retarder.is_a(), retarder.PredefinedType) == ("IfcCovering", "MEMBRANE")
    assert named["footing"].PredefinedType == "STRIP_FOOTING"
    assert named["basement/pier P1 pad"].PredefinedType == "PAD_FOOTING"
    kinds = {e.PredefinedType for e in model.by_type("IfcPipeFitting")}
    assert kinds >= {"BEND", "JUNCTION", "USERDEFINED"}
    told = ifc_read.sets(slab)
    datum = layout.design.datum.top_of_footing
    assert told["Bedcourse_Levels"]["TopFromTopOfFooting"] == pytest.approx(area.finished_floor)
    assert told["Bedcourse_Levels"]["TopElevation"] == pytest.approx(datum + area.finished_floor)
    assert told["Qto_SlabBaseQuantities"]["Width"] == pytest.approx(area.floor.layers[-1].thickness)
    assert told["Bedcourse_Part"]["Source"].startswith("normal-weight concrete")
    (floor,) = model.by_type("IfcElementAssembly")
    layers = floor.HasAssociations[0].RelatingMaterial.MaterialLayers
    assert [layer.LayerThickness for layer in layers] == [x.thickness for x in area.floor.layers]
    assert {e.Tag for e in floor.IsDecomposedBy[0].RelatedObjects} == {
        f"basement/{layer.name}" for layer in area.floor.layers
    }
    assert model.by_type("IfcSite")[0].RefElevation == pytest.approx(datum)


def test_standard_sets_hold_only_what_the_standard_names(house):
    from ifcopenshell.util.pset import PsetQto

    _, _, model = house
    known = PsetQto("IFC4")
    found = {}
    for element in ifc_read.bodies(model):
        for name, values in ifc_read.sets(element).items():
            if name.startswith(("Pset_", "Qto_")):
                assert name in known.get_applicable_names(element.is_a()), (element.is_a(), name)
                found.setdefault(name, set()).update(set(values) - {"id"})
    assert {"Qto_SlabBaseQuantities", "Pset_PipeSegmentOccurrence"} <= found.keys()
    for name, values in found.items():
        assert values <= {p.Name for p in known.get_by_name(name).HasPropertyTemplates}, name


def test_guids_stay_with_the_parts_and_differ_between_houses(layout, house):
    _, data, model = house
    assert to_ifc(layout, house[0]) == data
    thicker = network(SMALL, floor__layer__0__thickness="8 in")
    other = network(SMALL, project__name="Another invented house")
    again, moved = (ifc_read.read(written(lay_out(d))[1]) for d in (thicker, other))
    first, second, third = (
        {e.Tag: e.GlobalId for e in ifc_read.bodies(m)} for m in (model, again, moved)
    )
    assert first == second
    assert first.keys() == third.keys()
    assert not set(first.values()) & set(third.values())


def test_without_the_library_one_sentence_says_what_to_install(layout, house, monkeypatch):
    monkeypatch.setattr(library, "find_spec", lambda _: None)
    with pytest.raises(library.IfcLibraryError, match=r"requirements-ifc\.lock"):
        to_ifc(layout, house[0])

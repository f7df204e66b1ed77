"""The command `batch`: what it refuses before any worker is started."""

import pytest
from typer.testing import CliRunner

from viz.carried import demo, examples
from viz.commands.main import app

TWO = [str(path) for path in examples().values()][:2]
FOAM = "floor.layer[foam].thickness=1 in"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([*TWO, "--vary", FOAM], "--vary changes one design; 2 were named"),
        (["nowhere.toml"], "does not exist"),
        ([str(demo()), "--vary", "wall.height"], "names no values"),
        ([str(demo().parent.parent / "fonts")], "there is no design file"),
    ],
)
def test_what_cannot_be_run_is_said_in_a_sentence(words, said, tmp_path):
    result = CliRunner().invoke(app, ["batch", *words, "--out", str(tmp_path / "out")])
    assert result.exit_code == 2
    assert said in result.output
    assert not (tmp_path / "out").exists()

import io
import subprocess
import sys
import threading

import pytest
from basement_of_boxes import ACROSS, basement
from PIL import Image

from geometry.errors import BedcourseError
from viz.scene import worker
from viz.scene.errors import NoPictures
from viz.scene.view import View, Window
from viz.scene.worker import Studio

INSTALL = "apt-get install libegl1 libgl1"
SOLIDS = basement()


@pytest.fixture
def studio():
    made = Studio()
    yield made
    made.close()


def test_without_opengl_the_sentence_comes_at_once_and_no_process_starts(monkeypatch, studio):
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(worker, "found", lambda name: name == "libGL.so.1")
    monkeypatch.setattr(subprocess, "Popen", lambda *_a, **_k: pytest.fail("started a process"))
    with pytest.raises(NoPictures, match=INSTALL):
        studio.still(SOLIDS, View("whole"), (200, 150))


@pytest.mark.parametrize(
    ("there", "window"),
    [
        ({"libEGL.so.1", "libGL.so.1"}, "vtkEGLRenderWindow"),
        ({"libEGL.so.1", "libGL.so.1", "libOSMesa.so.8"}, "vtkEGLRenderWindow"),
        ({"libGL.so.1", "libOSMesa.so.8"}, "vtkOSOpenGLRenderWindow"),
    ],
)
def test_which_libraries_are_enough(monkeypatch, there, window):
    monkeypatch.setattr(sys, "platform", "linux")
    assert worker.settings(there.__contains__)["VTK_DEFAULT_OPENGL_WINDOW"] == window


@pytest.mark.parametrize("there", [{"libEGL.so.1"}, {"libGL.so.1"}, set()])
def test_half_of_opengl_is_none(monkeypatch, there):
    monkeypatch.setattr(sys, "platform", "linux")
    with pytest.raises(NoPictures, match=INSTALL):
        worker.settings(there.__contains__)


def test_the_asking_process_never_loads_vtk():
    code = (
        "import sys; import viz.scene.worker, viz.scene.child; "
        "print([m for m in sys.modules if m.split('.')[0] in ('vtk', 'vtkmodules', 'pyvista')])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.pictures
def test_a_still_is_a_png_of_the_asked_size_and_the_process_is_kept(studio):
    before = set(sys.modules)
    first = studio.still(SOLIDS, View("whole"), (320, 240))
    process = studio._process
    second = studio.still(SOLIDS, View("exploded"), (240, 320))
    assert Image.open(io.BytesIO(first)).size == (320, 240)
    assert Image.open(io.BytesIO(second)).size == (240, 320)
    assert studio._process is process
    loaded = set(sys.modules) - before
    assert not [m for m in loaded if m.split(".")[0] in ("vtkmodules", "pyvista")]


@pytest.mark.slow
@pytest.mark.pictures
def test_a_refusal_comes_back_as_its_sentence_and_the_process_lives(studio):
    with pytest.raises(BedcourseError, match="needs a cut line"):
        studio.still(SOLIDS, View("cutaway"), (200, 150))
    assert studio.still(SOLIDS, View("cutaway", cut=ACROSS), (200, 150)).startswith(b"\x89PNG")


@pytest.mark.slow
@pytest.mark.pictures
def test_an_unforeseen_fault_is_one_sentence_and_the_process_lives(studio):
    nowhere = View("face the cut", cut=ACROSS, window=Window(*[float("nan")] * 4))
    with pytest.raises(NoPictures, match="could not be drawn"):
        studio.still(SOLIDS, nowhere, (200, 150))
    assert studio._process.poll() is None


@pytest.mark.parametrize("size", [(0, 100), (200, 63), (9000, 200)])
def test_a_size_that_cannot_be_drawn_is_refused_before_a_process_starts(studio, size):
    with pytest.raises(BedcourseError, match="give 64 to 8000 each way"):
        studio.still(SOLIDS, View("whole"), size)
    assert studio._process is None


@pytest.mark.slow
@pytest.mark.pictures
def test_a_dead_process_is_one_sentence_and_the_next_picture_works(studio):
    studio.still(SOLIDS, View("whole"), (200, 150))
    killer = threading.Timer(0.05, studio._process.kill)
    killer.start()
    with pytest.raises(NoPictures, match="ended before the picture was done") as caught:
        studio.still(SOLIDS, View("whole"), (3000, 2400))
    assert INSTALL in str(caught.value)
    assert "\n" not in str(caught.value)
    assert studio.still(SOLIDS, View("whole"), (200, 150)).startswith(b"\x89PNG")


@pytest.mark.pictures
def test_a_picture_that_takes_too_long_is_stopped():
    impatient = Studio(patience=0.2)
    with pytest.raises(NoPictures, match=r"longer than 0\.2 seconds"):
        impatient.still(SOLIDS, View("whole"), (1200, 900))
    assert impatient._process is None

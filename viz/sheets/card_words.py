"""What a card says in sentences: titles, how a stage is laid, hold points, cautions."""

from geometry.site.records import Caution, Hold, Stage
from geometry.site.stages import stages
from viz.figures.stage.flags import Flag
from viz.sheets.card_blocks import Held
from viz.sheets.card_cells import Entry
from viz.sheets.card_levels import entries, flags
from viz.sheets.card_print import Printed


class Words(Printed):
    """All sentences of the cards of one layout."""

    def title(self, stage: Stage) -> str:
        """Return what a stage is called, numbered where it goes on over several cards."""
        name = self.say(f"stage.{stage.key}")
        same = [
            s
            for s in stages(self.layout)
            if (s.key, s.drain) == (stage.key, stage.drain) and stage.key == "inverts"
        ]
        return f"{name} {same.index(stage) + 1}/{len(same)}" if len(same) > 1 else name

    def named(self, stage: Stage) -> tuple[str, str]:
        """Return what the picture calls the thing that is laid: with its thickness, and without."""
        key = "role.drain_stone" if stage.key == "drain_stone" else f"stage.{stage.key}"
        name = self.say("stage.pipe" if stage.key == "inverts" else key)
        name = name[:1].upper() + name[1:]
        if stage.drain or stage.key == "pit" or stage.thickness is None:
            return name, name
        return f"{name} {self.thick(stage.thickness[1])}", name

    def under_title(self, stage: Stage, number: int, count: int) -> str:
        """Return the line under a title: where it is, and which card of how many."""
        of = self.say("card.number", number=str(number), count=str(count))
        return f"{self._where(stage)}. {of}."

    def _where(self, stage: Stage) -> str:
        drain = self.drain(stage)
        if drain:
            return self.drain_title(drain)
        everywhere = len(stage.areas) == len(self.layout.areas)
        if everywhere and (len(stage.areas) > 1 or stage.key in ("subgrade", "backfill")):
            return self.say("card.house")
        return self.say("card.floor_of", areas=", ".join(stage.areas))

    def instructions(self, stage: Stage) -> str:
        """Return how a stage is laid."""
        figures = self.figures(stage.figures)
        return " ".join(self.say(f"do.{key}", **figures) for key in stage.instructions)

    def holds(self, stage: Stage) -> tuple[Held, ...]:
        """Return the hold points with who looks."""
        return tuple(self._held(hold) for hold in stage.holds)

    def _held(self, hold: Hold) -> Held:
        words = self.say(f"hold.{hold.key}", **self.figures(hold.figures))
        by = ", ".join(self.say(f"by.{who}") for who in hold.by)
        seen = f"{self.say('card.seen_by')}: {by}"
        return Held(f"{words} {self.source(hold.source)}", seen, self.say("card.name_date"))

    def cautions(self, stage: Stage) -> tuple[str, ...]:
        """Return the dangers of a stage, each with its source."""
        return tuple(map(self._caution, stage.cautions))

    def _caution(self, caution: Caution) -> str:
        words = self.say(f"caution.{caution.key}", **self.figures(caution.figures))
        return f"{words} {self.source(caution.source)}"

    def foot(self) -> str:
        """Return the line at the foot of every card."""
        means = self.say("card.tof_means")
        return f"{means}. {self.say('card.picture')} {self.say('card.foot')}"

    def flags(self, stage: Stage) -> tuple[Flag, ...]:
        """Return the levels that stand big beside the picture."""
        return flags(self, stage)

    def entries(self, stage: Stage) -> tuple[Entry, ...]:
        """Return the levels of a stage that do not stand beside its picture."""
        return entries(self, stage)

    def project(self) -> str:
        """Return whose card it is."""
        return self.layout.design.project.name

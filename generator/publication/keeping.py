"""What is written down after a make for the next one, and which files of the output that one may trust unread."""

from collections.abc import Mapping
from pathlib import Path

from generator.build.cache import Cache
from generator.build.manifest import NAME as MANIFEST
from generator.build.program import program_mark, program_stamp
from generator.build.snapshot import Snapshot, looked_again, snapshot_of
from generator.build.store import WriteReport
from generator.publication.memory import Last, content_snapshot, remember
from generator.publication.pieces import pieces_of, put
from generator.publication.plan import results_in
from generator.publication.sources_apart import ledger_marks, pantry_marks
from generator.publication.understanding import Disk, Group, Memory, Understood, shortened_site


class Shelf:
    """The output folder, looked at by a make that has it to itself: what stands in it as the last make left it need
    not be read."""

    def __init__(self, output: Path, before: Memory | None) -> None:
        self._output = output
        self._before = before
        self.stood = Snapshot(stamps={}, mark="", newest=0)

    def trusted(self) -> Mapping[str, str]:
        """The marks of the files that are as the last make left them, by their sizes and times."""
        self.stood = snapshot_of(self._output)
        if self._before is None:
            return {}
        now, then = self.stood.stamps, self._before.outputs
        return {
            path: mark
            for files in results_in(self._before.groups).values()
            for path, mark in files
            if path in now and now[path] == then.get(path)
        }

    def after(self, report: WriteReport) -> None:
        """Only what was written is looked at again. A file that somebody else changed meanwhile stands here as it
        was, and so will be read the next time."""
        if report.removed or report.kept:
            self.stood = snapshot_of(self._output)
        elif report.written:
            self.stood = looked_again(self.stood, self._output, (*report.written, MANIFEST))


def keep(
    root: Path,
    output: Path,
    disk: Disk,
    known: Understood,
    around: str,
    ground: str,
    groups: Mapping[str, Group],
    stood: Snapshot,
    cache: Cache,
) -> None:
    """Writes down what the next make may rely on. What changed while it was read is not relied on."""
    marks = {path: disk.mark(path) for path in disk.stamps}
    after = content_snapshot(root)
    restless = {path for path, stamp in disk.stamps.items() if after.stamps.get(path) != stamp}
    texts = {each.span.path: known.texts.get(each.span.path, "") for each in known.diagnostics}
    before, as_listed = disk.before, known.reached is not None
    young = after.doubtful(disk.since)
    site = before.site if before and as_listed else put(shortened_site(known.publication.site), cache)
    memory = Memory(
        program=program_mark(),
        program_stamp=program_stamp(),
        day=known.day,
        stamps=dict(disk.stamps),
        marks={path: "" if path in restless else mark for path, mark in marks.items()},
        young=young,
        pantry=dict(pantry_marks(root / "pantry.yaml") or {}),
        packs=dict(known.packs),
        ledger=dict(ledger_marks(root / "ledger.jsonl") or {}),
        records=dict(known.records),
        photos=known.photos,
        ties=dict(known.ties),
        pieces=pieces_of(known.leaves, cache),
        site=site,
        frame=known.publication.frame,
        diagnostics=known.diagnostics,
        texts=texts,
        around=around,
        ground=ground,
        groups=dict(groups),
        outputs=dict(stood.stamps),
        told=known.publication.people is not None,
    )
    remember(cache, "memory", root, output, memory)
    if restless or set(after.stamps) != set(disk.stamps):
        return
    last = Last(
        program=memory.program_stamp,
        day=known.day,
        zone=known.publication.settings.zone,
        content=after.mark,
        doubtful={path: marks[path] for path in young},
        output=stood.mark,
        files=len(stood.stamps),
        diagnostics=known.diagnostics,
        texts=texts,
    )
    remember(cache, "last", root, output, last)

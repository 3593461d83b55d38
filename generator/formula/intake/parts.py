"""`formula:` read into parts and lines."""

from generator.catalogue.names import fold
from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.diagnostics.span import Span
from generator.formula.intake.collect import Collector
from generator.formula.intake.stated import read_build, read_flour_share, read_hydration
from generator.formula.line import read_line
from generator.formula.written import PREFERMENTS, Name, WrittenLine, WrittenPart
from generator.measure.unit import Spoons
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.fields import check_keys, yes_no_of

LINE_KEYS = (
    *("line", "recipe", "pantry", "optional", "or", "note", "agree", "discard"),
    *("hydration", "flour"),
)
PART_KEYS = ("lines", "counts", "preferment", "hydration", "flour", "build", "total")


def read_parts(front: Mapping, *, spoons: Spoons, collector: Collector) -> tuple[WrittenPart, ...]:
    """The parts in the order of the file; a formula that is one list is one part named ""."""
    node = front.get("formula")
    if isinstance(node, Sequence):
        return (_part("", node, node, spoons=spoons, collector=collector),)
    if isinstance(node, Mapping):
        return tuple(
            _part(_part_name(key, collector), key, value, spoons=spoons, collector=collector)
            for key, value in node.entries
        )
    if node is not None and node.value.strip():  # a lone text
        message = "the formula must be a list of ingredient lines, or parts with a list each"
        hint = "Put each ingredient on a line of its own that starts with “- ”."
        collector.say(Diagnostic(code="F010", message=message, span=node.span, hint=hint))
        return ()
    key = front.key("formula")
    span = key.span if key else front.span.slice(0, 1)
    message = "this recipe has no formula yet: what is in it is not known"
    hint = "Add “formula:” and below it one line for each ingredient, such as “  - 240 g water”."
    collector.say(Diagnostic(code="F011", message=message, span=span, hint=hint))
    return ()


def _part_name(key: Text, collector: Collector) -> str:
    name = " ".join(key.value.split())
    if not name or "/" in name or ":" in name or "{" in name:
        message = "a part needs a plain name, without “/”, “:” or braces"
        collector.say(
            Diagnostic(code="F012", message=message, span=key.span, hint="Call it “dough” or “filling”.")
        )
    return name


def _part(name: str, at: Text | Sequence, node: Node, *, spoons: Spoons, collector: Collector) -> WrittenPart:
    keys = node if isinstance(node, Mapping) else Mapping(entries=(), span=node.span)
    lines = node
    if isinstance(node, Mapping):
        collector.add(check_keys(node, PART_KEYS, what=f"the part “{name}”", needed=("lines",)))
        found = node.get("lines")
        lines = found if found is not None else Sequence(items=(), span=node.span)
    if not isinstance(lines, Sequence):
        message = f"the part “{name}” needs a list of ingredient lines"
        hint = "Put each ingredient on a line of its own that starts with “- ”."
        collector.say(Diagnostic(code="F010", message=message, span=lines.span, hint=hint))
        lines = Sequence(items=(), span=lines.span)
    elif not lines.items:
        message = f"the part “{name}” has no ingredient" if name else "this formula has no ingredient"
        hint = "Add a line such as “- 240 g water”, or delete the part."
        collector.say(Diagnostic(code="F013", message=message, span=at.span, hint=hint))
    read = tuple(_line(item, spoons=spoons, collector=collector) for item in lines.items)
    return WrittenPart(
        name=name,
        span=at.span,
        counts=_yes_no(keys, "counts", default=True, collector=collector),
        preferment=_preferment(keys, collector),
        lines=tuple(line for line in read if line is not None),
        hydration=read_hydration(keys, collector),
        flour=read_flour_share(keys, collector),
        build=read_build(keys, collector),
        total=_total(keys, collector),
    )


def _total(node: Mapping, collector: Collector) -> Span | None:
    """The place of `total: yes`."""
    key = node.key("total")
    says = _yes_no(node, "total", default=False, collector=collector)
    return key.span if key is not None and says else None


def _yes_no(node: Mapping, key: str, *, default: bool, collector: Collector) -> bool:
    value = node.get(key)
    if value is None:
        return default
    answer = collector.value(yes_no_of(value))
    return default if answer is None else answer


def _preferment(node: Mapping, collector: Collector) -> str | None:
    value = node.get("preferment")
    if value is None:
        return None
    text = collector.text(value)
    if text is None:
        return None
    kind = " ".join(text.value.split()).casefold()
    if kind in ("yes", "no", "true", "false"):
        return "preferment" if kind in ("yes", "true") else None
    if fold(kind) not in PREFERMENTS:
        message = f"“{text.value}” is no kind of preferment that is known here; it counts as fermented"
        hint = did_you_mean(kind, PREFERMENTS) or "The kinds are " + ", ".join(PREFERMENTS) + "."
        collector.say(Diagnostic(code="F014", message=message, span=text.span, hint=hint))
    return kind


def _line(node: Node, *, spoons: Spoons, collector: Collector) -> WrittenLine | None:
    if isinstance(node, Text):
        return _plain_line(node, spoons=spoons, collector=collector)
    if isinstance(node, Mapping):
        return _mapped_line(node, spoons=spoons, collector=collector)
    message = "an ingredient line is a text, or a mapping with “line:”"
    hint = "Write “- 240 g water”, or “- {line: 240 g water, optional: yes}”."
    collector.say(Diagnostic(code="F015", message=message, span=node.span, hint=hint))
    return None


def _plain_line(text: Text, *, spoons: Spoons, collector: Collector) -> WrittenLine:
    written = collector.value(read_line(text.value, text.at, spoons=spoons))
    return WrittenLine(
        written=written,
        recipe=None,
        pantry=None,
        optional=False,
        alternatives=(),
        note="",
        agree=True,
        discard=None,
        span=text.span,
    )


def _mapped_line(node: Mapping, *, spoons: Spoons, collector: Collector) -> WrittenLine | None:
    keys = node.keys()
    if len(keys) == 1 and keys[0] not in LINE_KEYS:
        return _broken_line(node, spoons=spoons, collector=collector)
    collector.add(check_keys(node, LINE_KEYS, what="an ingredient line", needed=("line",)))
    text = collector.text(node.get("line"))
    if text is None:
        return None
    plain = _plain_line(text, spoons=spoons, collector=collector)
    return WrittenLine(
        written=plain.written,
        recipe=_name(node, "recipe", collector),
        pantry=_name(node, "pantry", collector),
        optional=_yes_no(node, "optional", default=False, collector=collector),
        alternatives=_alternatives(node.get("or"), spoons=spoons, collector=collector),
        note=collector.words(node, "note"),
        agree=_yes_no(node, "agree", default=True, collector=collector),
        discard=_name(node, "discard", collector),
        span=text.span,
        hydration=read_hydration(node, collector),
        flour=_name(node, "flour", collector),
    )


def _broken_line(node: Mapping, *, spoons: Spoons, collector: Collector) -> WrittenLine | None:
    """`- salt: 10 g`, which YAML takes for a mapping; understood, so that its references are not reported too."""
    key, value = node.entries[0]
    amount = value.value if isinstance(value, Text) else "…"
    message = f"“{key.value}: …” is not an ingredient line: the amount comes first and there is no colon"
    hint = f"Write “- {amount} {key.value}”, in quotes if the line itself has a colon."
    collector.say(Diagnostic(code="F015", message=message, span=key.span, hint=hint))
    if not isinstance(value, Text):
        return None
    text = Text(value=f"{value.value} {key.value}", span=key.span, inset=None)
    return _plain_line(text, spoons=spoons, collector=Collector())


def _alternatives(node: Node | None, *, spoons: Spoons, collector: Collector) -> tuple[WrittenLine, ...]:
    if node is None:
        return ()
    items = node.items if isinstance(node, Sequence) else (node,)
    read = (_line(item, spoons=spoons, collector=collector) for item in items)
    return tuple(line for line in read if line is not None)


def _name(node: Mapping, key: str, collector: Collector) -> Name | None:
    text = collector.text(node.get(key))
    return None if text is None else Name(text=" ".join(text.value.split()), span=text.span)

"""`weighs:` and `bakes_off:`, what the bake weighs when it is done."""

from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.intake.collect import Collector
from generator.measure.number import Range
from generator.measure.quantity import read_quantity
from generator.measure.unit import Spoons
from generator.source.document import Mapping, Node
from generator.source.fields import percent_of


def read_losses(
    front: Mapping, *, spoons: Spoons, collector: Collector
) -> tuple[Range | None, Fraction | None]:
    """The finished weight in grams, or the loss as a fraction of the raw weight; never both."""
    weighs, loss = front.get("weighs"), front.get("bakes_off")
    if weighs is not None and loss is not None:
        key = front.key("bakes_off")
        collector.say(
            Diagnostic(
                code="F020",
                message="the finished weight is given twice: `weighs` and `bakes_off`",
                span=key.span if key else loss.span,
                hint="Keep the one that you measured and delete the other.",
            )
        )
    grams = _weighs(weighs, spoons=spoons, collector=collector) if weighs is not None else None
    share = _bakes_off(loss, collector) if loss is not None else None
    return grams, share


def _weighs(node: Node, *, spoons: Spoons, collector: Collector) -> Range | None:
    text = collector.text(node)
    if text is None:
        return None
    read = read_quantity(text.value.strip(), spoons=spoons)
    grams = read[0].grams() if read and read[1] == len(text.value.strip()) else None
    if grams is None or grams.low <= 0:
        hint = "Write a weight, such as “weighs: 260 g”."
        message = f"“{text.value}” is not a weight"
        collector.say(Diagnostic(code="F021", message=message, span=text.span, hint=hint))
        return None
    return grams


def _bakes_off(node: Node, collector: Collector) -> Fraction | None:
    share = collector.value(percent_of(node))
    if share is None or share < 1:
        return share
    message = "a loss must be less than 100 % of the raw weight"
    hint = "Bread loses about 10 to 15 % (common practice); weigh before and after."
    collector.say(Diagnostic(code="F022", message=message, span=node.span, hint=hint))
    return None

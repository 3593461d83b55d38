"""What is published is smaller and means the same."""

import pytest

from generator.render.site.slim import slim_css, slim_html, slim_js


@pytest.mark.parametrize(
    ("written", "published"),
    [
        (
            "a { color: red; }\n\n/* why */\nb > c,\nd { margin: 0.5rem -0.25em; }\n",
            "a{color:red}b>c,d{margin:.5rem -.25em}",
        ),
        (
            "@media (min-width: 40rem) and (hover) { a :is(b, c) + d { x: calc(1px + 2px); } }",
            "@media (min-width:40rem) and (hover){a :is(b,c) + d{x:calc(1px + 2px)}}",
        ),
        ('a::after { content: " /* no > remark */ ; "; }', 'a::after{content:" /* no > remark */ ; "}'),
        ("a { background: url(x;y.svg); width: 10.05px; }", "a{background:url(x;y.svg);width:10.05px}"),
    ],
)
def test_a_sheet(written: str, published: str) -> None:
    assert slim_css(written) == published


@pytest.mark.parametrize(
    ("written", "published"),
    [
        (
            "// why\n(() => {\n\n  const a = b - -c;\n  if (a) return;\n",
            "(()=>{\nconst a=b - -c;\nif(a)return;\n",
        ),
        ('  say("a = b // c");\n', 'say("a = b // c");\n'),
        ('  say( "a = b", c );\n', 'say("a = b",c);\n'),
        ("const a = `x\n  y`;\n", "const a = `x\n  y`;\n"),
    ],
)
def test_a_script(written: str, published: str) -> None:
    assert slim_js(written) == published


@pytest.mark.parametrize(
    ("written", "published"),
    [
        ('<p class="a" id="b-1">say class="a" x</p>', '<p class=a id=b-1>say class="a" x</p>'),
        ('<a href="../x/" title="two words">', '<a href="../x/" title="two words">'),
        ('<a href="../x/index.html">', '<a href="../x/index.html">'),
        ('<rect width="9" height="9"/>', '<rect width="9" height="9"/>'),
        (
            '<script id="a">"<p class="b">"</script><p class="b">',
            '<script id="a">"<p class="b">"</script><p class=b>',
        ),
        ('<input value="" disabled class="c">', '<input value="" disabled class=c>'),
        (
            "<table>\n<tr>\n<td>1</td>\n<td>2\n</td></tr>\n</table>\n",
            "<table><tr><td>1</td><td>2</td></tr></table>\n",
        ),
        ("<ul>\n<li><a>x</a>\n<b>y</b>\n</li>\n</ul>", "<ul>\n<li><a>x</a>\n<b>y</b>\n</li></ul>"),
        ("<p>two\nlines\n</p>\n<section>", "<p>two\nlines</p><section>"),
        ("<div>\n<pre>\n<p>\n</pre>\n</div>", "<div>\n<pre>\n<p>\n</pre></div>"),
    ],
)
def test_a_page(written: str, published: str) -> None:
    assert slim_html(written) == published

"""Rendering against examples of the published syntax.

Sources: the CommonMark specification, version 0.31.2 (2024-01-28), spec.commonmark.org/0.31.2, by
the number of the example; and John Gruber's 'Markdown: Syntax' (2004),
daringfireball.net/projects/markdown/syntax, by the heading the example stands under.

Only examples of which the two agree with the dialect of the leaves are here. Where they do not,
the leaves follow Gruber and the markdown package: a backslash before a line end is no break, a
quote goes on across an empty line, one loose item leaves the others tight.
Examples whose links are relative addresses are left out, since the leaves allow none.
"""

import re

import pytest

from binder.page.markup.markdown import to_html

COMMONMARK = [
    (4, "  - foo\n\n\tbar\n", "<ul><li><p>foo</p><p>bar</p></li></ul>"),
    (8, "    foo\n\tbar\n", "<pre><code>foo\nbar\n</code></pre>"),
    (10, "#\tFoo\n", "<h1>Foo</h1>"),
    (15, "\\\\*emphasis*\n", "<p>\\<em>emphasis</em></p>"),
    (17, "`` \\[\\` ``\n", "<p><code>\\[\\`</code></p>"),
    (18, "    \\[\\]\n", "<pre><code>\\[\\]\n</code></pre>"),
    (19, "~~~\n\\[\\]\n~~~\n", "<pre><code>\\[\\]\n</code></pre>"),
    (29, "&copy\n", "<p>&amp;copy</p>"),
    (30, "&MadeUpEntity;\n", "<p>&amp;MadeUpEntity;</p>"),
    (35, "`f&ouml;&ouml;`\n", "<p><code>f&amp;ouml;&amp;ouml;</code></p>"),
    (36, "    f&ouml;f&ouml;\n", "<pre><code>f&amp;ouml;f&amp;ouml;\n</code></pre>"),
    (37, "&#42;foo&#42;\n*foo*\n", "<p>*foo*\n<em>foo</em></p>"),
    (38, "&#42; foo\n\n* foo\n", "<p>* foo</p><ul><li>foo</li></ul>"),
    (42, "- `one\n- two`\n", "<ul><li>`one</li><li>two`</li></ul>"),
    (44, "+++\n", "<p>+++</p>"),
    (45, "===\n", "<p>===</p>"),
    (46, "--\n**\n__\n", "<p>--\n**\n__</p>"),
    (47, " ***\n  ***\n   ***\n", "<hr /><hr /><hr />"),
    (48, "    ***\n", "<pre><code>***\n</code></pre>"),
    (50, "_____________________________________\n", "<hr />"),
    (51, " - - -\n", "<hr />"),
    (52, " **  * ** * ** * **\n", "<hr />"),
    (54, "- - - -    \n", "<hr />"),
    (55, "_ _ _ _ a\n\na------\n\n---a---\n", "<p>_ _ _ _ a</p><p>a------</p><p>---a---</p>"),
    (57, "- foo\n***\n- bar\n", "<ul><li>foo</li></ul><hr /><ul><li>bar</li></ul>"),
    (58, "Foo\n***\nbar\n", "<p>Foo</p><hr /><p>bar</p>"),
    (59, "Foo\n---\nbar\n", "<h2>Foo</h2><p>bar</p>"),
    (60, "* Foo\n* * *\n* Bar\n", "<ul><li>Foo</li></ul><hr /><ul><li>Bar</li></ul>"),
    (
        62,
        "# foo\n## foo\n### foo\n#### foo\n##### foo\n###### foo\n",
        "<h1>foo</h1><h2>foo</h2><h3>foo</h3><h4>foo</h4><h5>foo</h5><h6>foo</h6>",
    ),
    (63, "####### foo\n", "<p>####### foo</p>"),
    (64, "#5 bolt\n\n#hashtag\n", "<p>#5 bolt</p><p>#hashtag</p>"),
    (65, "\\## foo\n", "<p>## foo</p>"),
    (66, "# foo *bar* \\*baz\\*\n", "<h1>foo <em>bar</em> *baz*</h1>"),
    (67, "#                  foo                     \n", "<h1>foo</h1>"),
    (68, " ### foo\n  ## foo\n   # foo\n", "<h3>foo</h3><h2>foo</h2><h1>foo</h1>"),
    (69, "    # foo\n", "<pre><code># foo\n</code></pre>"),
    (71, "## foo ##\n  ###   bar    ###\n", "<h2>foo</h2><h3>bar</h3>"),
    (72, "# foo ##################################\n##### foo ##\n", "<h1>foo</h1><h5>foo</h5>"),
    (74, "### foo ### b\n", "<h3>foo ### b</h3>"),
    (75, "# foo#\n", "<h1>foo#</h1>"),
    (
        76,
        "### foo \\###\n## foo #\\##\n# foo \\#\n",
        "<h3>foo ###</h3><h2>foo ###</h2><h1>foo #</h1>",
    ),
    (77, "****\n## foo\n****\n", "<hr /><h2>foo</h2><hr />"),
    (78, "Foo bar\n# baz\nBar foo\n", "<p>Foo bar</p><h1>baz</h1><p>Bar foo</p>"),
    (
        80,
        "Foo *bar*\n=========\n\nFoo *bar*\n---------\n",
        "<h1>Foo <em>bar</em></h1><h2>Foo <em>bar</em></h2>",
    ),
    (83, "Foo\n-------------------------\n\nFoo\n=\n", "<h2>Foo</h2><h1>Foo</h1>"),
    (89, "Foo  \n-----\n", "<h2>Foo</h2>"),
    (98, "---\n---\n", "<hr /><hr />"),
    (99, "- foo\n-----\n", "<ul><li>foo</li></ul><hr />"),
    (102, "\\> foo\n------\n", "<h2>&gt; foo</h2>"),
    (103, "Foo\n\nbar\n---\nbaz\n", "<p>Foo</p><h2>bar</h2><p>baz</p>"),
    (104, "Foo\nbar\n\n---\n\nbaz\n", "<p>Foo\nbar</p><hr /><p>baz</p>"),
    (105, "Foo\nbar\n* * *\nbaz\n", "<p>Foo\nbar</p><hr /><p>baz</p>"),
    (106, "Foo\nbar\n\\---\nbaz\n", "<p>Foo\nbar\n---\nbaz</p>"),
    (
        107,
        "    a simple\n      indented code block\n",
        "<pre><code>a simple\n  indented code block\n</code></pre>",
    ),
    (108, "  - foo\n\n    bar\n", "<ul><li><p>foo</p><p>bar</p></li></ul>"),
    (109, "1.  foo\n\n    - bar\n", "<ol><li><p>foo</p><ul><li>bar</li></ul></li></ol>"),
    (
        110,
        "    <a/>\n    *hi*\n\n    - one\n",
        "<pre><code>&lt;a/&gt;\n*hi*\n\n- one\n</code></pre>",
    ),
    (
        111,
        "    chunk1\n\n    chunk2\n  \n \n \n    chunk3\n",
        "<pre><code>chunk1\n\nchunk2\n\n\n\nchunk3\n</code></pre>",
    ),
    (113, "Foo\n    bar\n\n", "<p>Foo\nbar</p>"),
    (114, "    foo\nbar\n", "<pre><code>foo\n</code></pre><p>bar</p>"),
    (116, "        foo\n    bar\n", "<pre><code>    foo\nbar\n</code></pre>"),
    (119, "```\n<\n >\n```\n", "<pre><code>&lt;\n &gt;\n</code></pre>"),
    (120, "~~~\n<\n >\n~~~\n", "<pre><code>&lt;\n &gt;\n</code></pre>"),
    (121, "``\nfoo\n``\n", "<p><code>foo</code></p>"),
    (122, "```\naaa\n~~~\n```\n", "<pre><code>aaa\n~~~\n</code></pre>"),
    (123, "~~~\naaa\n```\n~~~\n", "<pre><code>aaa\n```\n</code></pre>"),
    (124, "````\naaa\n```\n``````\n", "<pre><code>aaa\n```\n</code></pre>"),
    (125, "~~~~\naaa\n~~~\n~~~~\n", "<pre><code>aaa\n~~~\n</code></pre>"),
    (127, "`````\n\n```\naaa\n", "<pre><code>\n```\naaa\n</code></pre>"),
    (130, "```\n```\n", "<pre><code></code></pre>"),
    (131, " ```\n aaa\naaa\n```\n", "<pre><code>aaa\naaa\n</code></pre>"),
    (132, "  ```\naaa\n  aaa\naaa\n  ```\n", "<pre><code>aaa\naaa\naaa\n</code></pre>"),
    (133, "   ```\n   aaa\n    aaa\n  aaa\n   ```\n", "<pre><code>aaa\n aaa\naaa\n</code></pre>"),
    (134, "    ```\n    aaa\n    ```\n", "<pre><code>```\naaa\n```\n</code></pre>"),
    (135, "```\naaa\n  ```\n", "<pre><code>aaa\n</code></pre>"),
    (136, "   ```\naaa\n  ```\n", "<pre><code>aaa\n</code></pre>"),
    (137, "```\naaa\n    ```\n", "<pre><code>aaa\n    ```\n</code></pre>"),
    (139, "~~~~~~\naaa\n~~~ ~~\n", "<pre><code>aaa\n~~~ ~~\n</code></pre>"),
    (140, "foo\n```\nbar\n```\nbaz\n", "<p>foo</p><pre><code>bar\n</code></pre><p>baz</p>"),
    (
        141,
        "foo\n---\n~~~\nbar\n~~~\n# baz\n",
        "<h2>foo</h2><pre><code>bar\n</code></pre><h1>baz</h1>",
    ),
    (145, "``` aa ```\nfoo\n", "<p><code>aa</code>\nfoo</p>"),
    (147, "```\n``` aaa\n```\n", "<pre><code>``` aaa\n</code></pre>"),
    (
        223,
        "aaa\n             bbb\n                                       ccc\n",
        "<p>aaa\nbbb\nccc</p>",
    ),
    (224, "   aaa\nbbb\n", "<p>aaa\nbbb</p>"),
    (225, "    aaa\nbbb\n", "<pre><code>aaa\n</code></pre><p>bbb</p>"),
    (227, "  \n\naaa\n  \n\n# aaa\n\n  \n", "<p>aaa</p><h1>aaa</h1>"),
    (228, "> # Foo\n> bar\n> baz\n", "<blockquote><h1>Foo</h1><p>bar\nbaz</p></blockquote>"),
    (229, "># Foo\n>bar\n> baz\n", "<blockquote><h1>Foo</h1><p>bar\nbaz</p></blockquote>"),
    (230, "   > # Foo\n   > bar\n > baz\n", "<blockquote><h1>Foo</h1><p>bar\nbaz</p></blockquote>"),
    (
        231,
        "    > # Foo\n    > bar\n    > baz\n",
        "<pre><code>&gt; # Foo\n&gt; bar\n&gt; baz\n</code></pre>",
    ),
    (232, "> # Foo\n> bar\nbaz\n", "<blockquote><h1>Foo</h1><p>bar\nbaz</p></blockquote>"),
    (233, "> bar\nbaz\n> foo\n", "<blockquote><p>bar\nbaz\nfoo</p></blockquote>"),
    (234, "> foo\n---\n", "<blockquote><p>foo</p></blockquote><hr />"),
    (241, ">\n> foo\n>  \n", "<blockquote><p>foo</p></blockquote>"),
    (243, "> foo\n> bar\n", "<blockquote><p>foo\nbar</p></blockquote>"),
    (244, "> foo\n>\n> bar\n", "<blockquote><p>foo</p><p>bar</p></blockquote>"),
    (245, "foo\n> bar\n", "<p>foo</p><blockquote><p>bar</p></blockquote>"),
    (
        246,
        "> aaa\n***\n> bbb\n",
        "<blockquote><p>aaa</p></blockquote><hr /><blockquote><p>bbb</p></blockquote>",
    ),
    (247, "> bar\nbaz\n", "<blockquote><p>bar\nbaz</p></blockquote>"),
    (248, "> bar\n\nbaz\n", "<blockquote><p>bar</p></blockquote><p>baz</p>"),
    (
        250,
        "> > > foo\nbar\n",
        "<blockquote><blockquote><blockquote><p>foo\nbar</p></blockquote></blockquote></blockquote>",
    ),
    (
        253,
        "A paragraph\nwith two lines.\n\n    indented code\n\n> A block quote.\n",
        "<p>A paragraph\nwith two lines.</p><pre><code>indented code\n</code></pre>"
        "<blockquote><p>A block quote.</p></blockquote>",
    ),
    (
        254,
        "1.  A paragraph\n    with two lines.\n\n        indented code\n\n    > A block quote.\n",
        "<ol><li><p>A paragraph\nwith two lines.</p><pre><code>indented code\n</code></pre>"
        "<blockquote><p>A block quote.</p></blockquote></li></ol>",
    ),
    (255, "- one\n\n two\n", "<ul><li>one</li></ul><p>two</p>"),
    (261, "-one\n\n2.two\n", "<p>-one</p><p>2.two</p>"),
    (256, "- one\n\n  two\n", "<ul><li><p>one</p><p>two</p></li></ul>"),
    (262, "- foo\n\n\n  bar\n", "<ul><li><p>foo</p><p>bar</p></li></ul>"),
    (
        263,
        "1.  foo\n\n    ```\n    bar\n    ```\n\n    baz\n\n    > bam\n",
        "<ol><li><p>foo</p><pre><code>bar\n</code></pre><p>baz</p>"
        "<blockquote><p>bam</p></blockquote></li></ol>",
    ),
    (265, "123456789. ok\n", '<ol start="123456789"><li>ok</li></ol>'),
    (267, "0. ok\n", '<ol start="0"><li>ok</li></ol>'),
    (269, "-1. not ok\n", "<p>-1. not ok</p>"),
    (
        272,
        "    indented code\n\nparagraph\n\n    more code\n",
        "<pre><code>indented code\n</code></pre><p>paragraph</p>"
        "<pre><code>more code\n</code></pre>",
    ),
    (275, "   foo\n\nbar\n", "<p>foo</p><p>bar</p>"),
    (277, "-  foo\n\n   bar\n", "<ul><li><p>foo</p><p>bar</p></li></ul>"),
    (
        291,
        "  1.  A paragraph\n    with two lines.\n",
        "<ol><li>A paragraph\nwith two lines.</li></ol>",
    ),
    (
        294,
        "- foo\n  - bar\n    - baz\n      - boo\n",
        "<ul><li>foo<ul><li>bar<ul><li>baz<ul><li>boo</li></ul></li></ul></li></ul></li></ul>",
    ),
    (
        295,
        "- foo\n - bar\n  - baz\n   - boo\n",
        "<ul><li>foo</li><li>bar</li><li>baz</li><li>boo</li></ul>",
    ),
    (298, "- - foo\n", "<ul><li><ul><li>foo</li></ul></li></ul>"),
    (303, "Foo\n- bar\n- baz\n", "<p>Foo</p><ul><li>bar</li><li>baz</li></ul>"),
    (
        304,
        "The number of windows in my house is\n14.  The number of doors is 6.\n",
        "<p>The number of windows in my house is\n14.  The number of doors is 6.</p>",
    ),
    (
        305,
        "The number of windows in my house is\n1.  The number of doors is 6.\n",
        "<p>The number of windows in my house is</p><ol><li>The number of doors is 6.</li></ol>",
    ),
    (
        306,
        "- foo\n\n- bar\n\n\n- baz\n",
        "<ul><li><p>foo</p></li><li><p>bar</p></li><li><p>baz</p></li></ul>",
    ),
    (
        310,
        "- a\n - b\n  - c\n   - d\n  - e\n - f\n- g\n",
        "<ul><li>a</li><li>b</li><li>c</li><li>d</li><li>e</li><li>f</li><li>g</li></ul>",
    ),
    (322, "- a\n", "<ul><li>a</li></ul>"),
    (323, "- a\n  - b\n", "<ul><li>a<ul><li>b</li></ul></li></ul>"),
    (
        324,
        "1. ```\n   foo\n   ```\n\n   bar\n",
        "<ol><li><pre><code>foo\n</code></pre><p>bar</p></li></ol>",
    ),
    (
        325,
        "* foo\n  * bar\n\n  baz\n",
        "<ul><li><p>foo</p><ul><li>bar</li></ul><p>baz</p></li></ul>",
    ),
    (
        326,
        "- a\n  - b\n  - c\n\n- d\n  - e\n  - f\n",
        "<ul><li><p>a</p><ul><li>b</li><li>c</li></ul></li>"
        "<li><p>d</p><ul><li>e</li><li>f</li></ul></li></ul>",
    ),
    (327, "`hi`lo`\n", "<p><code>hi</code>lo`</p>"),
    (328, "`foo`\n", "<p><code>foo</code></p>"),
    (329, "`` foo ` bar ``\n", "<p><code>foo ` bar</code></p>"),
    (330, "` `` `\n", "<p><code>``</code></p>"),
    (339, "``foo`bar``\n", "<p><code>foo`bar</code></p>"),
    (340, "` foo `` bar `\n", "<p><code>foo `` bar</code></p>"),
    (341, "*foo`*`\n", "<p>*foo<code>*</code></p>"),
    (342, "[not a `link](/foo`)\n", "<p>[not a <code>link](/foo</code>)</p>"),
    (343, '`<a href="`">`\n', '<p><code>&lt;a href="</code>"&gt;`</p>'),
    (348, "`foo\n", "<p>`foo</p>"),
    (349, "`foo``bar``\n", "<p>`foo<code>bar</code></p>"),
    (350, "*foo bar*\n", "<p><em>foo bar</em></p>"),
    (351, "a * foo bar*\n", "<p>a * foo bar*</p>"),
    (355, "foo*bar*\n", "<p>foo<em>bar</em></p>"),
    (356, "5*6*78\n", "<p>5<em>6</em>78</p>"),
    (357, "_foo bar_\n", "<p><em>foo bar</em></p>"),
    (358, "_ foo bar_\n", "<p>_ foo bar_</p>"),
    (360, "foo_bar_\n", "<p>foo_bar_</p>"),
    (361, "5_6_78\n", "<p>5_6_78</p>"),
    (362, "пристаням_стремятся_\n", "<p>пристаням_стремятся_</p>"),
    (386, "foo__bar__\n", "<p>foo__bar__</p>"),
    (387, "5__6__78\n", "<p>5__6__78</p>"),
    (390, "foo-__(bar)__\n", "<p>foo-<strong>(bar)</strong></p>"),
    (391, "**foo bar **\n", "<p>**foo bar **</p>"),
    (393, "*(**foo**)*\n", "<p><em>(<strong>foo</strong>)</em></p>"),
    (395, '**foo "*bar*" foo**\n', '<p><strong>foo "<em>bar</em>" foo</strong></p>'),
    (396, "**foo**bar\n", "<p><strong>foo</strong>bar</p>"),
    (399, "_(__foo__)_\n", "<p><em>(<strong>foo</strong>)</em></p>"),
    (400, "__foo__bar\n", "<p>__foo__bar</p>"),
    (402, "__foo__bar__baz__\n", "<p><strong>foo__bar__baz</strong></p>"),
    (405, "*foo\nbar*\n", "<p><em>foo\nbar</em></p>"),
    (406, "_foo __bar__ baz_\n", "<p><em>foo <strong>bar</strong> baz</em></p>"),
    (410, "*foo **bar** baz*\n", "<p><em>foo <strong>bar</strong> baz</em></p>"),
    (413, "***foo** bar*\n", "<p><em><strong>foo</strong> bar</em></p>"),
    (414, "*foo **bar***\n", "<p><em>foo <strong>bar</strong></em></p>"),
    (420, "** is not an empty emphasis\n", "<p>** is not an empty emphasis</p>"),
    (428, "**foo *bar* baz**\n", "<p><strong>foo <em>bar</em> baz</strong></p>"),
    (430, "***foo* bar**\n", "<p><strong><em>foo</em> bar</strong></p>"),
    (436, "foo ***\n", "<p>foo ***</p>"),
    (437, "foo *\\**\n", "<p>foo <em>*</em></p>"),
    (460, "**foo**\n", "<p><strong>foo</strong></p>"),
]

GRUBER = [
    ("Automatic Escaping", "&copy;", "<p>©</p>"),
    ("Automatic Escaping", "4 < 5", "<p>4 &lt; 5</p>"),
    ("Headers", "This is an H1\n=============\n\nThis is an H2\n-------------",
     "<h1>This is an H1</h1><h2>This is an H2</h2>"),
    ("Headers", "# This is an H1\n\n## This is an H2\n\n###### This is an H6",
     "<h1>This is an H1</h1><h2>This is an H2</h2><h6>This is an H6</h6>"),
    ("Headers", "# This is an H1 #\n\n## This is an H2 ##\n\n### This is an H3 ######",
     "<h1>This is an H1</h1><h2>This is an H2</h2><h3>This is an H3</h3>"),
    ("Blockquotes", "> This is the first level of quoting.\n>\n> > This is nested blockquote.\n>\n"
     "> Back to the first level.",
     "<blockquote><p>This is the first level of quoting.</p><blockquote>"
     "<p>This is nested blockquote.</p></blockquote><p>Back to the first level.</p></blockquote>"),
    ("Blockquotes", "> ## This is a header.\n> \n> 1.   This is the first list item.\n"
     "> 2.   This is the second list item.\n> \n> Here's some example code:\n> \n"
     '>     return shell_exec("echo $input | $markdown_script");',
     "<blockquote><h2>This is a header.</h2><ol><li>This is the first list item.</li>"
     "<li>This is the second list item.</li></ol><p>Here's some example code:</p>"
     '<pre><code>return shell_exec("echo $input | $markdown_script");\n</code></pre></blockquote>'),
    ("Lists", "*   Red\n*   Green\n*   Blue", "<ul><li>Red</li><li>Green</li><li>Blue</li></ul>"),
    ("Lists", "+   Red\n+   Green\n+   Blue", "<ul><li>Red</li><li>Green</li><li>Blue</li></ul>"),
    ("Lists", "-   Red\n-   Green\n-   Blue", "<ul><li>Red</li><li>Green</li><li>Blue</li></ul>"),
    ("Lists", "1.  Bird\n2.  McHale\n3.  Parish",
     "<ol><li>Bird</li><li>McHale</li><li>Parish</li></ol>"),
    ("Lists", "1.  Bird\n1.  McHale\n1.  Parish",
     "<ol><li>Bird</li><li>McHale</li><li>Parish</li></ol>"),
    ("Lists", "*   Bird\n\n*   Magic", "<ul><li><p>Bird</p></li><li><p>Magic</p></li></ul>"),
    ("Lists", "*   A list item with a blockquote:\n\n    > This is a blockquote\n"
     "    > inside a list item.",
     "<ul><li><p>A list item with a blockquote:</p><blockquote><p>This is a blockquote\n"
     "inside a list item.</p></blockquote></li></ul>"),
    ("Lists", "1986\\. What a great season.", "<p>1986. What a great season.</p>"),
    ("Code Blocks", "This is a normal paragraph:\n\n    This is a code block.",
     "<p>This is a normal paragraph:</p><pre><code>This is a code block.\n</code></pre>"),
    ("Horizontal Rules", "* * *\n\n***\n\n*****\n\n- - -\n\n------------------------------",
     "<hr /><hr /><hr /><hr /><hr />"),
    ("Links", 'This is [an example](http://example.com/ "Title") inline link.',
     '<p>This is <a href="http://example.com/" title="Title">an example</a> inline link.</p>'),
    ("Links", "[This link](http://example.net/) has no title attribute.",
     '<p><a href="http://example.net/">This link</a> has no title attribute.</p>'),
    ("Links", 'This is [an example][id] reference-style link.\n\n[id]: http://example.com/  '
     '"Optional Title Here"',
     '<p>This is <a href="http://example.com/" title="Optional Title Here">an example</a> '
     "reference-style link.</p>"),
    ("Links", "This is [an example] [id] reference-style link.\n\n[id]: <http://example.com/>",
     '<p>This is <a href="http://example.com/">an example</a> reference-style link.</p>'),
    ("Links", "[link text][a]\n[link text][A]\n\n[a]: http://example.com/ 'Optional Title Here'",
     '<p><a href="http://example.com/" title="Optional Title Here">link text</a>\n'
     '<a href="http://example.com/" title="Optional Title Here">link text</a></p>'),
    ("Emphasis", "*single asterisks*\n\n_single underscores_\n\n**double asterisks**\n\n"
     "__double underscores__",
     "<p><em>single asterisks</em></p><p><em>single underscores</em></p>"
     "<p><strong>double asterisks</strong></p><p><strong>double underscores</strong></p>"),
    ("Emphasis", "un*frigging*believable", "<p>un<em>frigging</em>believable</p>"),
    ("Emphasis", "\\*this text is surrounded by literal asterisks\\*",
     "<p>*this text is surrounded by literal asterisks*</p>"),
    ("Code", "Use the `printf()` function.", "<p>Use the <code>printf()</code> function.</p>"),
    ("Code", "``There is a literal backtick (`) here.``",
     "<p><code>There is a literal backtick (`) here.</code></p>"),
    ("Code", "A single backtick in a code span: `` ` ``",
     "<p>A single backtick in a code span: <code>`</code></p>"),
    ("Code", "Please don't use any `<blink>` tags.",
     "<p>Please don't use any <code>&lt;blink&gt;</code> tags.</p>"),
    ("Code", "`&#8212;` is the decimal-encoded equivalent of `&mdash;`.",
     "<p><code>&amp;#8212;</code> is the decimal-encoded equivalent of "
     "<code>&amp;mdash;</code>.</p>"),
    ("Automatic Links", "<http://example.com/>",
     '<p><a href="http://example.com/">http://example.com/</a></p>'),
    ("Automatic Links", "<address@example.com>",
     '<p><a href="mailto:address@example.com">address@example.com</a></p>'),
    ("Backslash Escapes", "\\*literal asterisks\\*", "<p>*literal asterisks*</p>"),
]  # fmt: skip

_BLOCK = r"</?(?:p|h\d|ul|ol|li|blockquote|hr)(?: [^>]*)?>"


def same(html: str) -> str:
    """HTML with white space that HTML does not show gone, and one way of writing what has two."""
    html = html.replace("<hr />", "<hr>").replace("<br />", "<br>").strip()
    parts = re.split(r"(<pre>.*?</pre>)", html, flags=re.DOTALL)
    words = (re.sub(rf"\s*({_BLOCK})\s*", r"\1", re.sub(r"\s+", " ", part)) for part in parts[::2])
    code = [*parts[1::2], ""]
    return "".join(part for pair in zip(words, code, strict=True) for part in pair)


@pytest.mark.parametrize(("number", "text", "expected"), COMMONMARK)
def test_commonmark_0_31_2(number: int, text: str, expected: str) -> None:
    assert same(to_html(text)) == same(expected), number


@pytest.mark.parametrize(("heading", "text", "expected"), GRUBER)
def test_gruber_2004(heading: str, text: str, expected: str) -> None:
    assert same(to_html(text)) == same(expected), heading

/** Texts a scenario may hold that must come out as text, never as markup, code or a rearranged line. */
export const HOSTILE_TEXTS: readonly string[] = [
  '<script>alert(1)</script>',
  '</script><script>alert(2)</script>',
  '</title></style></svg>"><img src=x onerror=alert(3)>',
  "' onmouseover='alert(4)",
  '<!-- <script>',
  'bell \u0007 escape \u001B[2J null \u0000 end',
  '\u202Egpj.exe\u2066 hidden \u2069',
  'line one\r\nline two\u2028line three',
  '&lt;b&gt; &amp; %{x} $\\alpha$ {{x}}',
  'lone \uD800 surrogate',
];

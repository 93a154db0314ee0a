/** The style of the page: served from its own address, since nothing inline is allowed. */
export const DOCS_STYLE = `
:root { color-scheme: light dark; --line: #8886; --link: #14549c; }
@media (prefers-color-scheme: dark) { :root { --link: #9cc4f5; } }
body { font: 1rem/1.5 system-ui, sans-serif; max-width: 60rem; margin: 0 auto; padding: 1rem; }
a { color: var(--link); }
h2 { margin-top: 2.5rem; border-bottom: 1px solid var(--line); }
article { margin: 1.5rem 0; }
code, pre { font-family: ui-monospace, monospace; font-size: 0.9em; }
pre { overflow-x: auto; padding: 0.75rem; border: 1px solid var(--line); }
nav ul { list-style: none; padding: 0; columns: 22rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.5rem; border-bottom: 1px solid var(--line); }
th[scope="row"] { font-weight: normal; }
dt { margin-top: 0.5rem; }
`;

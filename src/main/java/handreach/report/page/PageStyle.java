package handreach.report.page;

/** The style sheet of reports: one column, quiet rules, no colour that carries meaning alone, nothing below 12 px. */
final class PageStyle {
    static final String SHEET = """
            :root { color-scheme: light; --ink: #1f262b; --quiet: #4a545b; --rule: #d9dfe2; --deep: #0b4f7a; }
            * { box-sizing: border-box; }
            html { -webkit-text-size-adjust: 100%; }
            body { margin: 0 auto; padding: 3.5rem 1.5rem 4rem; max-width: 60rem; color: var(--ink); background: #fff;
              font: 1rem/1.58 system-ui, "Helvetica Neue", Arial, "Liberation Sans", sans-serif; }
            header { margin-bottom: 2.2rem; }
            .kind { margin: 0; color: var(--deep); font-size: .9rem; font-weight: 600; letter-spacing: .04em; }
            h1, h2, .answer { font-family: Charter, "Iowan Old Style", Georgia, "Liberation Serif", serif; }
            h1 { margin: .2rem 0 .6rem; font-size: 2.3rem; line-height: 1.18; font-weight: 600; letter-spacing: -.01em; }
            .question { margin: 0; max-width: 44rem; color: var(--quiet); font-size: 1.1rem; }
            .answer { margin: 0 0 1rem; padding: .1rem 0 .1rem 1.1rem; border-left: 4px solid var(--deep);
              font-size: 1.32rem; line-height: 1.45; max-width: 48rem; }
            nav { margin: 2.2rem 0 0; padding: .9rem 0 .4rem; border-top: 1px solid var(--rule);
              border-bottom: 1px solid var(--rule); }
            nav ul { columns: 2 19rem; column-gap: 2rem; margin: 0 0 .5rem; padding: 0; list-style: none; max-width: none;
              font-size: .95rem; }
            nav li { break-inside: avoid; padding-left: 2em; text-indent: -2em; }
            nav p { margin: .5rem 0 .3rem; color: var(--quiet); font-size: .92rem; }
            .mark { display: inline-block; min-width: 2em; text-indent: 0; color: var(--quiet); font-weight: 500;
              font-variant-numeric: tabular-nums; }
            a { color: var(--deep); text-decoration-thickness: 1px; text-underline-offset: 3px; }
            section { margin-top: 3.2rem; }
            section.first { margin-top: 0; }
            h2 { margin: 0 0 1rem; font-size: 1.6rem; line-height: 1.25; font-weight: 600; }
            .appendix { margin: 3.2rem 0 .4rem; color: var(--quiet); max-width: none; }
            details { border-top: 1px solid var(--rule); }
            details:last-of-type { border-bottom: 1px solid var(--rule); }
            summary { padding: .55rem 0; cursor: pointer; }
            summary h2 { display: inline; margin: 0; font-size: 1.15rem; }
            details > div { padding: .4rem 0 1.6rem; scroll-margin-top: 4rem; }
            h3 { margin: 1.6rem 0 .2rem; font-size: 1.05rem; }
            p, ul { margin: 0 0 1rem; max-width: 46rem; }
            ul { padding-left: 1.2rem; }
            li { margin-bottom: .35rem; }
            .quiet { color: var(--quiet); font-size: .92rem; }
            .warning { padding: .7rem 1rem; border: 1px solid var(--ink); border-left-width: 6px; }
            dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(13rem, 1fr)); gap: .9rem 1.6rem;
              margin: 0 0 1.4rem; }
            dt { color: var(--quiet); font-size: .88rem; }
            dd { margin: 0; font-weight: 600; }
            .wide { overflow-x: auto; margin: 0 0 1.6rem; }
            .blank td, .blank th[scope="row"] { height: 8mm; border-bottom: 1px solid; min-width: 22mm; }
            table { width: 100%; border-collapse: collapse; font-size: .95rem; line-height: 1.4; }
            caption { padding: 0 0 .6rem; text-align: left; color: var(--quiet); font-size: .92rem; }
            th, td { padding: .5rem .9rem .5rem 0; text-align: left; vertical-align: top;
              border-bottom: 1px solid var(--rule); }
            th { font-weight: 600; }
            tbody th { font-weight: 500; }
            thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; line-height: 1.25; }
            .n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
            thead .n { white-space: normal; }
            .whole { white-space: nowrap; }
            .short { white-space: nowrap; }
            .n .span { white-space: normal; }
            tr.sum th, tr.sum td { font-weight: 700; border-top: 1.5px solid var(--ink); }
            figure { margin: 1.2rem 0 2rem; }
            figure svg { display: block; max-width: 100%; height: auto; }
            figcaption { margin-top: .5rem; max-width: 46rem; color: var(--quiet); font-size: .92rem; }
            .cautions { padding: .4rem 1.4rem .6rem; border: 1.5px solid var(--ink); }
            footer { margin-top: 4rem; padding-top: .9rem; border-top: 1px solid var(--rule); color: var(--quiet);
              font-size: .88rem; }
            @media print {
              @page { margin: 8mm 10mm 8mm; }
              body { max-width: none; padding: 0; font-size: 9.5pt; line-height: 1.26; }
              h1 { margin: 0 0 1mm; font-size: 19pt; }
              h2 { margin: 0 0 1.5mm; font-size: 13pt; }
              h3 { margin: 2mm 0 .5mm; font-size: 10pt; }
              header { margin-bottom: 3mm; }
              p, ul, dl, .wide { max-width: none; margin-bottom: 2mm; }
              li { margin-bottom: .3mm; }
              .question { font-size: 10.5pt; }
              .answer { font-size: 12pt; margin-bottom: 2mm; line-height: 1.35; }
              .kind, .quiet, caption, figcaption, dt, dd, footer, table, nav ul, nav p { font-size: 9pt; }
              nav { margin: 3mm 0 0; padding: 1.5mm 0 0; break-inside: avoid; }
              nav ul { columns: 3; column-gap: 4mm; margin-bottom: 1mm; }
              nav p { margin: 1mm 0 .5mm; }
              a { color: inherit; text-decoration: none; }
              section, .appendix { margin-top: 2.5mm; orphans: 1; widows: 1; }
              .appendix { margin-bottom: 0; border-top: 2px solid var(--ink); padding-top: 1.5mm; font-size: 9pt; break-after: avoid; }
              details, details:last-of-type { border: 0; margin-top: 2.2mm; }
              details::details-content { content-visibility: visible; display: block; block-size: auto; }
              summary { padding: 0; list-style: none; break-after: avoid; }
              summary::-webkit-details-marker { display: none; }
              summary h2 { font-size: 11pt; }
              details > div { padding: .8mm 0 0; }
              details ul { columns: 2; column-gap: 6mm; }
              details table { line-height: 1.12; }
              details th, details td { padding-top: .2mm; padding-bottom: .2mm; }
              dl { gap: 1mm 4mm; }
              table { line-height: 1.16; }
              caption { padding-bottom: .8mm; }
              th, td { padding: .1mm 2mm .1mm 0; }
              figure { margin: 1.5mm 0 2.5mm; }
              figure svg { max-height: 62mm; width: auto; }
              figure.map { display: inline-block; width: 43%; margin-right: 5%; vertical-align: top; }
              figure.map svg { width: 100%; max-height: 80mm; }
              figure.map:only-of-type { width: 48%; }
              figure.map:only-of-type svg { max-height: 92mm; }
              section > figure:has(+ .wide):not(.map) { float: left; width: 36%; margin: 0 4% 2mm 0; }
              section > figure:has(+ .wide):not(.map) svg { width: 100%; max-height: none; }
              section > figure:has(+ .wide):not(.map) + .wide table { width: auto; }
              section::after { content: ""; display: block; clear: both; }
              details figure svg { max-height: 48mm; }
              details figure.of-table { display: none; }
              figcaption { max-width: none; margin-top: .5mm; }
              .warning { margin-bottom: 1.5mm; padding: 1mm 2.5mm; }
              .cautions { columns: 2; column-gap: 6mm; padding: 1mm 3mm 1mm; break-inside: avoid; }
              .caution h3 { margin-top: 1mm; }
              .caution p { margin-bottom: 1.5mm; font-size: 9pt; }
              footer { margin-top: 4mm; padding-top: 1mm; }
              h2, h3, caption, thead { break-after: avoid; }
              figure, tr, .warning, dl > div { break-inside: avoid; }
              table:not(:has(tbody tr:nth-child(9))) { break-inside: avoid; }
              p { orphans: 3; widows: 3; }
              p:has(+ figure) { break-after: avoid; }
              .wide { overflow: visible; }
            }
            """;

    private PageStyle() {}
}

/** Style of the file: one ink on white, letter or A4, narrow screens too. Its hash stands in the file's own policy. */
export const FILE_STYLE = `
*{box-sizing:border-box}
body{margin:0 auto;padding:1.5rem 1rem;max-inline-size:46rem;background:#fff;color:#101a1f;font:400 1rem/1.4 Verdana,"DejaVu Sans",sans-serif;font-variant-numeric:tabular-nums}
h1,h2,h3,p,ul,table,figure{margin:0;padding:0}
ul{list-style:none}
h1,h2,.ho-big,.ho-word{font-family:Rockwell,Georgia,serif;line-height:1.15}
h1{font-size:1.75rem;margin-block-end:.5rem}
h2{font-size:1.375rem}
h3{font-size:1rem;border-block-start:2px solid;padding-block-start:.3rem}
.vh{position:absolute;inline-size:1px;block-size:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.ho-report,.ho-part{display:grid;gap:1rem}
.ho-part{margin-block-start:1rem}
.ho-section{display:grid;gap:.35rem}
.ho-top{display:flex;flex-wrap:wrap;justify-content:space-between;gap:.25rem 1rem;color:#3b4950}
.ho-invented{border:2px dashed;padding:.4rem .75rem;font-weight:700}
.ho-verdict{display:grid;grid-template-columns:3.5rem minmax(0,1fr);gap:1rem;align-items:center;border:3px solid;padding:.6rem 1rem}
.ho-verdict svg{inline-size:3.5rem;block-size:3.5rem;fill:none;stroke:currentColor;stroke-width:1.75;stroke-linecap:round;stroke-linejoin:round}
.ho-word{font-size:1.5rem;margin-block-end:.25rem;font-weight:700}
.ho-big{font-size:1.25rem;font-weight:700}
.ho-cautions{border-inline-start:6px solid;padding-inline-start:.75rem}
.ho-dash li{padding-inline-start:1rem;text-indent:-1rem}
.ho-dash li::before{content:"\\2013\\00a0\\00a0"}
.ho-table,.ho-weights{inline-size:100%;border-collapse:collapse}
.ho-table th,.ho-table td,.ho-weights th,.ho-weights td{text-align:start;font-weight:400;vertical-align:top;padding:.25rem .6rem .25rem 0;border-block-end:1px solid #b7c0be;overflow-wrap:break-word}
.ho-table thead th{color:#3b4950}
.ho-table td:nth-child(2){font-weight:700}
.ho-weights td:nth-child(2){inline-size:10rem}
.ho-weights td:last-child{min-inline-size:10rem}
.ho-bar{display:block;inline-size:100%;block-size:1.25rem}
.ho-grid{stroke:#b7c0be;fill:none}
.ho-axis{stroke:#101a1f;fill:none}
.ho-for{fill:#101a1f}
.ho-against{fill:#fff;stroke:#101a1f}
.ho-reread svg{display:block;inline-size:100%;max-inline-size:26rem}
.ho-reread text{font-size:12px}
.ho-edge{fill:none;stroke:#111;stroke-width:1.2;stroke-dasharray:5 3}
.ho-figure{font-weight:700}
.ho-first{fill:#fff;stroke:#101a1f;stroke-width:2}
.ho-last{fill:#101a1f}
.ho-stations{display:grid;gap:.3rem}
.ho-stations li{display:grid;grid-template-columns:1.25rem minmax(0,1fr);gap:.5rem}
.ho-box{display:inline-grid;place-items:center;inline-size:1.1rem;block-size:1.1rem;border:1.5px solid;font-size:.8rem;line-height:1}
.ho-blank{display:inline-block;inline-size:8rem;border-block-end:1px solid}
.ho-photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(14rem,100%),1fr));gap:1rem}
.ho-photos img{display:block;inline-size:100%;block-size:auto;border:1px solid #6a777c}
.ho-photos figcaption,.ho-fine,.ho-foot{color:#3b4950;font-size:.875rem}
.ho-signs{display:grid;grid-template-columns:1fr 1fr;gap:2rem}
.ho-signs p{border-block-start:1px solid;padding-block-start:.3rem;margin-block-start:2.5rem}
@media screen and (max-width:40rem){
.ho-table,.ho-table tbody{display:block}
.ho-table thead{display:none}
.ho-table tr{display:block;border-block-end:1px solid #b7c0be;padding-block:.35rem}
.ho-table th,.ho-table td{display:block;border:0;padding:0}
.ho-table td::before{content:attr(data-head) ": ";font-weight:400;color:#3b4950}
.ho-table td.none{display:none}
.ho-weights td:nth-child(2){inline-size:5rem}
}
@page{margin:13mm 17mm 14mm;@bottom-right{content:counter(page) " of " counter(pages);font:9pt Verdana,sans-serif}}
@media print{
body{max-inline-size:none;padding:0;font-size:9.75pt;line-height:1.35}
tr,.ho-verdict,figure,li,.ho-signs{break-inside:avoid}
h2,h3{break-after:avoid}
}
`;

/** SHA-256 of FILE_STYLE, base64, for the file's policy; a test holds the two together. */
export const FILE_STYLE_HASH = 'Hd/vjY9qSC1M+351s14Nsm0DsYKmBa9o2bTz3gc5zDw=';

// How a chart looks: hair lines and black marks, dashes for a limit, dots for a work.

import { type Markup, sheet } from "./html.ts";

export const chartStyle: Markup = sheet`
figure { margin: 0 0 3pt; break-inside: avoid; }
svg { display: block; width: 100%; height: auto; overflow: visible; font-size: 10px; }
svg text { fill: #111; }
.name { font-weight: 600; }
.mid { text-anchor: middle; }
.end { text-anchor: end; }
svg .tick { text-anchor: end; font-size: 8px; }
svg path { fill: none; stroke: #111; stroke-width: 0.7; }
svg .edge { stroke: #999; stroke-width: 0.5; }
svg .level { stroke: #ccc; stroke-width: 0.5; }
svg .limit { stroke-width: 0.8; stroke-dasharray: 5 3; }
svg .work { stroke-width: 0.8; stroke-dasharray: 1 2; }
svg .marks { stroke: none; }
svg .cross { stroke-width: 1.2; }
svg .ink, svg .ink circle { fill: #111; stroke: none; }
svg .hollow, svg .hollow circle { fill: #fff; stroke: #111; stroke-width: 0.9; }
`;

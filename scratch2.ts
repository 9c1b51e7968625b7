import { planOf } from "./src/core/plan/planOf";
import { demoWorks } from "./src/document/demo";
for (const pick of [0, 14]) {
const w={...demoWorks()[3]!, picks: pick?{bustAlteration:pick}:{}};
const p=planOf(w); if(!p.ok) throw 1;
const cup=p.value.left.pieces.find(x=>x.name==="cup")!;
for (const e of cup.edges) console.log(e.from, e.seam, JSON.stringify(e.curve&&{c1:[e.curve.c1.x.toFixed(1),e.curve.c1.y.toFixed(1)],c2:[e.curve.c2.x.toFixed(1),e.curve.c2.y.toFixed(1)]}));
for (const [n,pt] of Object.entries(cup.points)) console.log("  ",n,pt!.at.x.toFixed(1),pt!.at.y.toFixed(1),pt!.level);
console.log(JSON.stringify(p.value.left.darts.filter(d=>d.ref.piece==="cup").map(d=>d.drawn)));
console.log(p.value.checks.filter(c=>c.pieces.includes("cup")).map(c=>`${c.name} ${c.ok} ${c.seam??c.point??c.level??""} ${c.measured.toFixed(2)}/${c.expected}`).join("\n"));
}

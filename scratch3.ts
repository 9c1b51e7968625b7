import { planOf } from "./src/core/plan/planOf";
import { demoWorks } from "./src/document/demo";
import { women1988 } from "./tests/support/surveys";
import { demoPatterns, tapedBy } from "./tests/support/surveyTally";
import { testWork } from "./tests/support/works";
import { tapesOf } from "./src/core/measures/tape";
for (const a of [-60,-50,-40,-30,-25,-14,0,14,25,50,90]) {
const w={...demoWorks()[3]!, picks: {bustAlteration:a}};
const p=planOf(w); if(!p.ok) {console.log(a,p.failure);continue;}
const b=p.value.ledger.find(x=>x.id==="bust"); const d=p.value.left.darts.find(d=>d.ref.piece==="cup")!.drawn;
console.log(a, b?.outcome.ok?"ok":JSON.stringify(b?.outcome), b?.what.kind==="bust"?b.what.drop.toFixed(2):"", "leg",d.legInner.toFixed(1),"int",d.intake.toFixed(1),"ang",(d.angle*57.2958).toFixed(2),"full",d.fullness.toFixed(1),"stop",d.apexToBustPoint?.toFixed(1), p.value.checks.filter(c=>!c.ok).map(c=>c.name+(c.point??c.seam??"")).join(" "));
}
for (const p of demoPatterns().filter(p=>p.length==="hip")) {
 let n=0,short=0,ref=0,worst=0,fails:any={}, sh:number[]=[];
 for (const m of women1988.map(tapedBy)) { const r=planOf({...testWork,pattern:p,tapes:tapesOf(m)}); if(!r.ok){fails[r.failure.code]=(fails[r.failure.code]??0)+1;continue;} n++; const {asked,alteration}=r.value.sizing.bust; if(asked!==alteration){short++;sh.push(Math.abs(asked-alteration));}
  for(const c of new Set(r.value.checks.filter(c=>!c.ok).map(c=>c.name))) fails[c]=(fails[c]??0)+1; }
 console.log(p.name,n,"short",short,"max missing",Math.max(0,...sh).toFixed(0),JSON.stringify(fails));
}

import { planOf } from "./src/core/plan/planOf";
import { demoWorks } from "./src/document/demo";
import { pieceIn, setOf } from "./src/core/pattern/pieceSet";
import { applyDartEnd } from "./src/core/alterations/redraw/moveDartEnd";
import { trueLegs } from "./src/core/dart/trueLegs";
import { trueSeamAtDart } from "./src/core/dart/trueSeam";
import { giveBack, giveBackPlaces, sewn } from "./src/core/alterations/redraw/giveBack";
import { withPiece } from "./src/core/pattern/pieceSet";
import { angleAt, distance } from "./src/core/geometry/point";
import { dartCorners } from "./src/core/dart/moveMouth";
const w=demoWorks()[3]!; const p=planOf(w); if(!p.ok) throw 1;
const set=setOf(p.value.left.pieces);
const ref={piece:"cup",dart:"underBustDart"} as const;
const show=(s:string,pc:any)=>{const c=dartCorners(pc,"underBustDart");console.log(s,(angleAt(c.apex,c.inner,c.outer)*57.29578).toFixed(2),"legs",distance(c.apex,c.inner).toFixed(2),distance(c.apex,c.outer).toFixed(2),"w",distance(c.inner,c.outer).toFixed(2));};
show("start",set.cup);
console.log(giveBackPlaces(set,ref));
for (const sh of [-10,-15,10]) for (const place of giveBackPlaces(set,ref)) {
 const alt={kind:"dartEnd",id:"x",dart:ref,shorten:sh,across:0,hold:"fullness",giveBack:{[place]:1}} as any;
 const before=sewn(set,ref); const ch=applyDartEnd(set.cup!,alt); if(!ch.ok){console.log(ch);continue;}
 show(`${sh} moved`,ch.value); const legs=trueLegs(ch.value,"underBustDart"); show("  legs",legs.piece);
 const t=trueSeamAtDart(legs.piece,"underBustDart"); show("  seam",t);
 const tp=withPiece(set,t); console.log("   sewn",before.toFixed(2),sewn(tp,ref).toFixed(2));
 const b=giveBack(tp,ref,before,{[place]:1}); if(b.ok) show(`  given ${place}`,pieceIn(b.value.pieces,"cup")); else console.log(b);
 const full=planOf({...w,alterations:[alt]}); if(full.ok) show("  plan",full.value.left.pieces.find(x=>x.name==="cup"));
}

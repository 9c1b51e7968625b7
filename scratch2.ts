import { howSure } from "./src/core/sureness/howSure";
import { nextMeasure } from "./src/core/sureness/nextMeasure";
import { testWork } from "./tests/support/works";
import { tapesOf } from "./src/core/measures/tape";
import { women1988 } from "./tests/support/surveys";
import { tapedBy, demoPatterns } from "./tests/support/surveyTally";
for (const [b,u] of [[905,830],[893,830],[905,832],[967,857]] as const){
 const w={...testWork,tapes:tapesOf({bustGirth:b,upperChestGirth:u,waistGirth:752,hipGirth:1034})};
 const s=howSure(w); console.log(b,u,JSON.stringify(s.ok&&s.value.ways.slice(0,5)), JSON.stringify(nextMeasure(w)));
}
let t1=0,t2=0,n=0, worst1=0, worst2=0; const dist:any={};
for (const p of demoPatterns().filter(p=>p.length==="hip")) for (const m of women1988.filter((_,i)=>i%64===0).map(tapedBy)) {
 const w={...testWork,pattern:{...p},tapes:tapesOf(m)};
 howSure(w); 
 const w2={...w,age:30};
 let t=performance.now(); const s=howSure(w2); let d=performance.now()-t; t1+=d; worst1=Math.max(worst1,d);
 if(s.ok){const k=s.value.surety.baseSize+"/"+s.value.surety.cup+"/"+s.value.surety.bust; dist[k]=(dist[k]??0)+1;}
 t=performance.now(); nextMeasure(w2); d=performance.now()-t; t2+=d; worst2=Math.max(worst2,d); n++;
}
console.log("howSure",t1/n,worst1,"next",t2/n,worst2,n); console.log(dist);

import { women1988 } from "./tests/support/surveys";
import { tapedBy, demoPatterns } from "./tests/support/surveyTally";
import { pickWay } from "./src/core/sizing/pickWay";
import { outsideOf, pickSizing } from "./src/core/sizing/pickSizing";
import { pickInterval } from "./src/core/sizing/pickInterval";
import { HARM } from "./src/core/sizing/harm";
const inch = { sizes: [31.5,32.5,33.5,34.5,36,37.5,39,41,43,45,47,49].map((b,i)=>({label:String(4+2*i),bust:b*25.4,waist:(b-8)*25.4,hip:(b+2)*25.4})), draftedDifference: 50.8, cups:[{label:"A",difference:25.4},{label:"B",difference:50.8},{label:"C",difference:76.2},{label:"D",difference:101.6}]};
const uneven = { sizes: [780,815,842,890,925,985,1020,1080,1115,1190,1260].map((b,i)=>({label:String(i),bust:b,waist:b-180,hip:b+60})), draftedDifference: 40, cups:[{label:"s",difference:35},{label:"m",difference:60},{label:"l",difference:95}]};
const charts = [...new Map(demoPatterns().map(p=>[p.name,p.chart])).entries(), ["inch",inch],["uneven",uneven]] as const;
function old(chart:any, b:number,u:number){
  const d=b-u; const byBust = chart.cups.length===0 && Math.abs(d-chart.draftedDifference)<=12;
  const vals=chart.sizes.map((s:any)=>byBust?s.bust:s.bust-chart.draftedDifference);
  const i=pickInterval(vals, byBust?b:u).index;
  const c=chart.cups.length?chart.cups[pickInterval(chart.cups.map((c:any)=>c.difference),d).index].difference:chart.draftedDifference;
  const r=d-c; const a=Math.abs(r)<=12?0:r;
  return {i,a,err:b-(chart.sizes[i].bust-chart.draftedDifference+c)-a, r: b-(chart.sizes[i].bust-chart.draftedDifference+c)};
}
for (const [name, chart] of charts){
  let n=0,o={un:0,in12:0,wrong:0,alt:0,off:0}, w={un:0,alt:0,over:0,wrong:0,out:0,outmax:0,moved:0,full:0,small:0};
  const t0=performance.now();
  for (const m of women1988.map(tapedBy)){
    const b=m.bustGirth!,u=m.upperChestGirth!;
    const g={bust:{value:b,spread:10},upperChest:{value:u,spread:12}};
    if(outsideOf(chart as any,g)) continue; n++;
    const p=old(chart,b,u);
    if(Math.abs(p.err)>12) o.off++;
    if(p.a===0&&Math.abs(p.r)>12)o.un++; if(p.a!==0&&Math.abs(p.r)<=12)o.in12++; if(p.a*p.r<0)o.wrong++; if(p.a!==0)o.alt++;
    const q=pickWay(chart as any,g);
    if(q.alteration!==0)w.alt++; if(q.alteration>0)w.full++; if(q.alteration<0)w.small++;
    if(Math.abs(q.residual-q.alteration)>12)w.over++; if(q.alteration*q.residual<0)w.wrong++;
    const out=Math.max(0,u-q.offer.to,q.offer.from-u); const inner=pickInterval(chart.sizes.map((s:any)=>s.bust-chart.draftedDifference),u).index;
    if(inner!==q.offer.index){w.moved++; w.outmax=Math.max(w.outmax,out);}
  }
  console.log(name,n,JSON.stringify(o),JSON.stringify(w));
}
const T=performance.now(); for(const m of women1988.map(tapedBy)) pickSizing(charts[0][1] as any,{value:m.bustGirth!,spread:10},{value:m.upperChestGirth!,spread:12},{});
console.log("pickSizing us", (performance.now()-T)/2.208);

import { demoWorks } from "./src/document/demo";
import { derivePlan } from "./src/core/plan/derivePlan";
import { surePassage } from "./src/words/surePassage";
import { bustSentence } from "./src/words/blend";
for (const w of demoWorks()) { const p=derivePlan(w); if(!p.ok) {console.log(w.name,p.failure);continue;}
 const {baseSize,cup,bust,alternatives}=p.value.sizing; console.log(w.name,baseSize.label,cup.label,JSON.stringify(bust), bustSentence(bust,w.unit)); console.log("   ",baseSize.margin,baseSize.runnerUp,cup.margin,cup.runnerUp); console.log("  ",surePassage(w)?.said.join(" "), surePassage(w)?.next);
 console.log("  ", p.value.checks.filter(c=>!c.ok).length, alternatives.map(a=>`${a.baseSize}/${a.cup} r${a.residual.toFixed(0)} h${a.harm.toFixed(0)}`).join(", "));
}

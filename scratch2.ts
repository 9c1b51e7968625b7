import { planOf } from "./tests/support/works";
import { testWork } from "./tests/support/works";
import { tapesOf, measuresOf } from "./src/core/measures/tape";
for (const style of ["sideDart","midriff","princessArmhole"] as const) for (const b of [780,1060,1150,1250,1400]) {
 try { const {bust,baseSize,cup}=planOf({...testWork,pattern:{...testWork.pattern,style},tapes:tapesOf({...measuresOf(testWork.tapes),upperChestGirth:832,bustGirth:b})}).sizing; console.log(style,b,baseSize.label,cup.label,bust.asked,bust.alteration);} catch(e){console.log(style,b,String(e).slice(0,100));}
}

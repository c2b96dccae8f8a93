import { MODELS } from './electron/cli/load-models.ts';
import { tableProblem } from './shared/planning/model-problem.ts';
import { evaluatePolicy, rolloutPolicy, expand, actionsIn, keyOf } from './shared/planning/policy.ts';
import { advicePolicy } from './shared/planning/evaluation/model-ways.ts';
for (const m of MODELS){ const p=tableProblem(m.model); const a=advicePolicy(p,m.model);
 const vals=new Map<string,number>();
 const value=(s:any):number=>{const k=keyOf(s); const b=vals.get(k); if(b!==undefined) return b; const {cost,branches}=expand(p,s,a(s)); const v=cost+branches.reduce((t,x)=>t+x.share*value(x.next),0); vals.set(k,v); return v;};
 const pol=(s:any)=>{const first=a(s); let best=first,least=Infinity; for(const act of actionsIn(p,s)){ if(first.kind==='check'&&act.kind!=='check') continue; const {cost,branches}=expand(p,s,act); const q=cost+branches.reduce((t,x)=>t+x.share*value(x.next),0); if(q<least-1e-9){least=q;best=act;} } return best;};
 const g=(x:number)=>(100*(x-m.expected.optimalCost)/Math.abs(m.expected.optimalCost)).toFixed(2);
 console.log(m.id,'D',g(evaluatePolicy(p,pol as any).cost),'C',g(evaluatePolicy(p,rolloutPolicy(p,a)).cost),'first',g(evaluatePolicy(p,a).cost));
}

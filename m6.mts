import { MODELS } from './electron/cli/load-models.ts';
import { tableProblem } from './shared/planning/model-problem.ts';
import { expand, rolloutPolicy, oneStepPolicy } from './shared/planning/policy.ts';
import { solveExactly } from './shared/planning/exact.ts';
import { advicePolicy, informationPolicy } from './shared/planning/evaluation/model-ways.ts';
const m=MODELS.find(x=>x.id.startsWith('m6'))!; const p=tableProblem(m.model);
for (const [n,pol] of Object.entries({opt:solveExactly(p).policy, adv:advicePolicy(p,m.model), roll:rolloutPolicy(p,advicePolicy(p,m.model)), one:oneStepPolicy(p), info:informationPolicy(p,m.model)})) {
 const out:Record<string,number>={};
 const walk=(s:any,r:number)=>{const a=pol(s); if(a.kind==='decide'){const b=p.belief(s); m.model.causes.forEach((c,i)=>{const k=m.model.decisions[a.decision]!.id+'/'+c.id; out[k]=(out[k]??0)+r*b[i]!;});return;} for(const br of expand(p,s,a).branches) walk(br.next,r*br.share);};
 walk({...p.start,access:0},1);
 console.log(n,Object.fromEntries(Object.entries(out).filter(([k])=>!/stop/.test(k)&&/nuts|bearing|drag/.test(k)).map(([k,v])=>[k,+v.toFixed(6)])));
}
console.log('--- with threshold');
import { evaluatePolicy } from './shared/planning/policy.ts';
for (const TAU of [.03,.02,.015,.01]) for (const [n,base] of Object.entries({adv:advicePolicy(p,m.model), roll:rolloutPolicy(p,advicePolicy(p,m.model))})) {
 const hz=[2,3,4];
 const pol=(s:any)=>{const a=base(s); if(a.kind!=='decide'||a.decision>1) return a; const b=p.belief(s); if(hz.reduce((t,i)=>t+b[i]!,0)<TAU) return a; let best=2,c=Infinity; for(const d of [2,3]){const l=b.reduce((t,x,i)=>t+x*p.decisions[d]!.loss[i]!,0); if(l<c){c=l;best=d;}} return {kind:'decide',decision:best} as const;};
 const out:Record<string,number>={};
 const walk=(s:any,r:number)=>{const a=pol(s); if(a.kind==='decide'){const b=p.belief(s); m.model.causes.forEach((c,i)=>{const k=m.model.decisions[a.decision]!.id+'/'+c.id; out[k]=(out[k]??0)+r*b[i]!;});return;} for(const br of expand(p,s,a).branches) walk(br.next,r*br.share);};
 walk({...p.start,access:0},1);
 console.log(TAU,n,evaluatePolicy(p,pol as any).cost.toFixed(2),Object.fromEntries(Object.entries(out).filter(([k])=>/drive|^limp/.test(k)&&/nuts|bearing|drag/.test(k)).map(([k,v])=>[k,+v.toFixed(6)])));
}

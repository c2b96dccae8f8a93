import { appendFileSync } from 'node:fs';
import { loadTrees } from './electron/cli/load-trees.ts';
import { firstAnswerWay, plannerWay, taughtWay, work, drawCoach, seededRandom } from './shared/planning/evaluation/index.ts';
import { defaultCosts } from './shared/planning/index.ts';
const [,, seedS, nS, part, out, from="0"] = process.argv;
const seed=Number(seedS), n=Number(nS);
const { trees, vocabulary } = await loadTrees();
const ids=[...trees.keys()].sort().filter((_,i)=> i%2===Number(part));
const ways=new Map(ids.map(id=>[id,[firstAnswerWay(),plannerWay(),taughtWay()]]));
for (let i=Number(from);i<n;i++) for (const id of ids) {
  const tree=trees.get(id)!.value!;
  const coach=drawCoach(tree,vocabulary!,seededRandom(seed*1_000_003+i));
  if(!coach) continue;
  const o=ways.get(id)!.map(w=>{const r=work(coach,w,tree,vocabulary!,'mechanic',defaultCosts('mechanic'));return [r.cost,Number(r.right),r.wrongParts];});
  appendFileSync(out,JSON.stringify({id,seed,i,o})+'\n');
}

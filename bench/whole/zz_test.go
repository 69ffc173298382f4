package whole
import ("testing";"fmt";"brimline/internal/simulate")
func TestZZ(t *testing.T){
 best:=map[int]int{}
 for seed:=range uint64(200){ for k,s:=range simulate.Shapes { c:=simulate.Visit(seed,s,simulate.Plan{Called:"four pegs",Pegs:4,PegTies:true,Base:2}); n:=len(c.Order); best[n]++; if n>=58&&n<=62 { fmt.Println(seed,k,s.Name(),n,len(c.Readings)) } } }
 mx:=0; for n:=range best { if n>mx {mx=n} }; fmt.Println(mx)
}

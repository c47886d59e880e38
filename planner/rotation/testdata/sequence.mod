/* The best sequence of plantings in a pot, as a mixed-integer programme over days.

   Nothing here is shared with the planner's own method: a planting is not a stay
   from a day to another but a chain of days, of which each can only go on from the
   one before; the mix remembers by inequalities between days. */

param days, integer, > 0;
param options, integer, >= 0;
param groups, integer, >= 0;
param years, integer, > 0;
param min_stand, integer, >= 0;
param done, integer, >= 0;
param fixed;
param replace;
set D := 0 .. days - 1;
set O := 1 .. options;
set G := 1 .. groups;
set Y := 0 .. years - 1;

param open{D}, binary;
param allowed{O, D}, binary;
param value{O, D, D}, default 0;     # of a day, by option and day of planting
param standing{D};
param bare{D};
param cost{O};
param charged{D};
param year{D}, integer;
param most{Y}, integer;
param least{Y}, integer;
param host{O, G}, binary, default 0;
param standing_host{G}, binary, default 0;
param stays{G}, integer;
param standing_stays{G}, integer;
param release{G}, integer;
param refused{O, D, D}, binary, default 0;   # by option, day of planting and day
param bare_refused{D}, binary, default 0;
param standing_refused{D}, binary, default 0;

set S := setof{o in O, s in D: open[s] = 1 and allowed[o, s] = 1} (o, s);

var z{(o, s) in S, t in s .. days - 1}, binary;   # put out on s, stands on t
var b{D}, binary;                                 # the pot is empty
var w{D}, binary;                                 # what stood before today still stands
var r{D}, binary;                                 # all the mix is replaced
var q{D}, binary;                                 # so, and the planting goes on past the end

maximize total:
  sum{(o, s) in S, t in s .. days - 1} value[o, s, t] * z[o, s, t]
  + sum{t in D} (bare[t] * b[t] + standing[t] * w[t])
  - sum{(o, s) in S} (cost[o] + fixed) * (z[o, s, s] - (1 - charged[s]) * z[o, s, days - 1])
  - sum{s in D} replace * (r[s] - (1 - charged[s]) * q[s]);

s.t. one{t in D}: sum{(o, s) in S: s <= t} z[o, s, t] + b[t] + w[t] = 1;
s.t. chain{(o, s) in S, t in s + 1 .. days - 1}: z[o, s, t] <= z[o, s, t - 1];
s.t. chain_before{t in 1 .. days - 1}: w[t] <= w[t - 1];
s.t. ends{(o, s) in S, t in s + 1 .. days - 1: open[t] = 0}: z[o, s, t] = z[o, s, t - 1];
s.t. ends_bare{t in 1 .. days - 1: open[t] = 0}: b[t] = b[t - 1];
s.t. ends_before{t in 1 .. days - 1: open[t] = 0}: w[t] = w[t - 1];
s.t. begins{0 .. 0: open[0] = 0}: w[0] = 1;
s.t. stands{(o, s) in S, t in s .. days - 1: t < s + min_stand}: z[o, s, t] = z[o, s, s];
s.t. at_most{y in Y}: sum{(o, s) in S: year[s] = y} z[o, s, s] <= max(0, most[y] - (if y = 0 then done else 0));
s.t. at_least{y in Y}: sum{(o, s) in S: year[s] = y} z[o, s, s] + (if y = 0 then done else 0) >= least[y];

s.t. replaced{s in D}: r[s] <= sum{(o, s) in S} z[o, s, s];
s.t. replaced_late{s in D}: q[s] <= r[s];
s.t. goes_on{s in D}: q[s] <= sum{(o, s) in S} z[o, s, days - 1];

/* A host put out on u after another stood on t < u, and left on t + 1 or later. */
s.t. rotation{g in G, (o, u) in S, (p, s) in S, t in s .. u - 1:
    host[o, g] = 1 and host[p, g] = 1 and t + 1 + stays[g] > u}:
  z[o, u, u] + z[p, s, t] <= 1 + sum{v in t + 1 .. u} r[v];
s.t. rotation_before{g in G, (o, u) in S, t in 0 .. u - 1:
    host[o, g] = 1 and standing_host[g] = 1 and t + 1 + standing_stays[g] > u}:
  z[o, u, u] + w[t] <= 1 + sum{v in t + 1 .. u} r[v];
s.t. rotation_at_once{g in G, (o, u) in S:
    host[o, g] = 1 and standing_host[g] = 1 and standing_stays[g] > u}:
  z[o, u, u] <= sum{v in 0 .. u} r[v];
s.t. history{g in G, (o, u) in S: host[o, g] = 1 and release[g] > u}:
  z[o, u, u] <= sum{v in 0 .. u} r[v];

s.t. pins{(o, s) in S, t in s .. days - 1: refused[o, s, t] = 1}: z[o, s, t] = 0;
s.t. pins_bare{t in D: bare_refused[t] = 1}: b[t] = 0;
s.t. pins_before{t in D: standing_refused[t] = 1}: w[t] = 0;

solve;
printf "best %.9f\n", total;
end;

//! From rings to lines: each piece of border once, simplified.

use crate::areas::{Corner, Rings};
use place::arcs::Arc;
use std::collections::{BTreeMap, HashMap, HashSet};

const PER_DEGREE: f64 = 100_000.0;
/// Metres in a degree, for tolerances only.
const DEGREE_M: f64 = 111_320.0;

/// What an edge parts.
type Pair = (usize, Option<usize>);

/// The lines between the areas on a grid of so many steps a degree, each moved by no more than its tolerance in metres.
pub fn arcs(rings: &Rings, per_degree: u32, tolerance: impl Fn(usize, Option<usize>) -> f64) -> Vec<Arc> {
    let edges = edges(rings);
    let junctions = junctions(&edges);
    let mut arcs = Vec::new();
    for (pair, edges) in by_pair(edges) {
        for chain in chains(&edges, &junctions) {
            let kept = simplified(&chain, tolerance(pair.0, pair.1));
            let points = on_grid(&kept, per_degree);
            // A ring of which no area is left, and a piece shorter than a step.
            let gone = points.len() < 2 || (points.first() == points.last() && points.len() < 4);
            if !gone {
                arcs.push(Arc { one: pair.0, other: pair.1, points });
            }
        }
    }
    // Neighbours stand together: shorter steps from one to the next.
    arcs.sort_by_key(|arc| (arc.one, arc.other, arc.points[0]));
    arcs
}

/// Every edge with the areas that have it; one that an area has twice is inside it.
fn edges(rings: &Rings) -> HashMap<[Corner; 2], Vec<usize>> {
    let mut edges: HashMap<[Corner; 2], Vec<usize>> = HashMap::new();
    for (area, rings) in rings.iter().enumerate() {
        for ends in rings.iter().flat_map(|ring| ring.windows(2)) {
            if ends[0] == ends[1] || cut(ends[0], ends[1]) {
                continue;
            }
            let edge = if ends[0] < ends[1] { [ends[0], ends[1]] } else { [ends[1], ends[0]] };
            let areas = edges.entry(edge).or_default();
            match areas.iter().position(|there| *there == area) {
                Some(at) => drop(areas.remove(at)),
                None => areas.push(area),
            }
        }
    }
    edges.retain(|_, areas| !areas.is_empty());
    edges
}

/// Whether an edge lies along the antimeridian or at the south pole.
fn cut(a: Corner, b: Corner) -> bool {
    let along = |axis: usize, degrees: i32| [a, b].iter().all(|corner| corner[axis].abs() >= degrees * 100_000 - 1);
    along(0, 180) || (along(1, 89) && a[1] < 0)
}

/// Corners where a line ends or more than two edges meet.
fn junctions(edges: &HashMap<[Corner; 2], Vec<usize>>) -> HashSet<Corner> {
    let mut meeting: HashMap<Corner, usize> = HashMap::new();
    for corner in edges.keys().flatten() {
        *meeting.entry(*corner).or_default() += 1;
    }
    meeting.into_iter().filter(|(_, edges)| *edges != 2).map(|(corner, _)| corner).collect()
}

fn by_pair(edges: HashMap<[Corner; 2], Vec<usize>>) -> BTreeMap<Pair, Vec<[Corner; 2]>> {
    let mut pairs: BTreeMap<Pair, Vec<[Corner; 2]>> = BTreeMap::new();
    for (edge, mut areas) in edges {
        areas.sort_unstable();
        // More than two areas overlap: the source's slip; each two have the edge between them.
        for two in areas.chunks(2) {
            pairs.entry((two[0], two.get(1).copied())).or_default().push(edge);
        }
    }
    pairs.values_mut().for_each(|edges| edges.sort_unstable());
    pairs
}

/// Edges put together to lines from junction to junction, and rings.
fn chains(edges: &[[Corner; 2]], junctions: &HashSet<Corner>) -> Vec<Vec<Corner>> {
    let mut from: BTreeMap<Corner, Vec<usize>> = BTreeMap::new();
    for (at, edge) in edges.iter().enumerate() {
        edge.iter().for_each(|corner| from.entry(*corner).or_default().push(at));
    }
    let ends = |corner: &Corner| junctions.contains(corner) || from[corner].len() != 2;
    let mut used = vec![false; edges.len()];
    let mut chains = Vec::new();
    let starts = from.keys().filter(|corner| ends(corner)).chain(from.keys());
    for start in starts {
        for first in &from[start] {
            let mut chain = vec![*start];
            let mut next = Some(*first).filter(|first| !used[*first]);
            while let Some(at) = next {
                used[at] = true;
                let here = *chain.last().expect("a chain has its start");
                let there = if edges[at][0] == here { edges[at][1] } else { edges[at][0] };
                chain.push(there);
                next = if ends(&there) { None } else { from[&there].iter().copied().find(|at| !used[*at]) };
            }
            if chain.len() > 1 {
                chains.push(chain);
            }
        }
    }
    chains
}

/// A line with as few corners as lie no further from it than the tolerance.
///
/// **Source**: Douglas & Peucker (1973), Algorithms for the reduction of the number of points required to represent a
/// digitized line or its caricature, Cartographica 10: 112–122.
fn simplified(chain: &[Corner], tolerance_m: f64) -> Vec<Corner> {
    let shrink = (f64::from(chain[0][1]) / PER_DEGREE).to_radians().cos().max(0.01);
    let metres = |corner: Corner| {
        let [x, y] = corner.map(|steps| f64::from(steps) / PER_DEGREE * DEGREE_M);
        [x * shrink, y]
    };
    let last = chain.len() - 1;
    let mut kept = vec![false; chain.len()];
    (kept[0], kept[last]) = (true, true);
    let mut spans = vec![(0, last)];
    while let Some((from, to)) = spans.pop() {
        let ends = [metres(chain[from]), metres(chain[to])];
        let away = (from + 1..to).map(|at| (away_m(metres(chain[at]), ends), at));
        if let Some((most_m, at)) = away.max_by(|a, b| a.0.total_cmp(&b.0))
            // A ring keeps two corners besides its start, however small it is.
            && (most_m > tolerance_m || (from == 0 && to == last && chain[0] == chain[last]))
        {
            kept[at] = true;
            spans.extend([(from, at), (at, to)]);
        }
    }
    let mut kept_corners: Vec<Corner> = chain.iter().zip(&kept).filter(|(_, kept)| **kept).map(|(at, _)| *at).collect();
    if chain[0] == chain[last] && kept_corners.len() == 3 && chain.len() > 3 {
        let ends = [metres(kept_corners[0]), metres(kept_corners[1])];
        let free = (0..chain.len()).filter(|at| !kept[*at]);
        let third = free.max_by(|a, b| away_m(metres(chain[*a]), ends).total_cmp(&away_m(metres(chain[*b]), ends)));
        third.into_iter().for_each(|at| kept[at] = true);
        kept_corners = chain.iter().zip(&kept).filter(|(_, kept)| **kept).map(|(at, _)| *at).collect();
    }
    kept_corners
}

/// From a point to the nearest of the way between two ends.
fn away_m(point: [f64; 2], ends: [[f64; 2]; 2]) -> f64 {
    let [a, b] = ends;
    let (way, from) = ([b[0] - a[0], b[1] - a[1]], [point[0] - a[0], point[1] - a[1]]);
    let length2 = way[0] * way[0] + way[1] * way[1];
    let share = if length2 > 0.0 { ((from[0] * way[0] + from[1] * way[1]) / length2).clamp(0.0, 1.0) } else { 0.0 };
    (from[0] - share * way[0]).hypot(from[1] - share * way[1])
}

fn on_grid(corners: &[Corner], per_degree: u32) -> Vec<[i32; 2]> {
    let step = PER_DEGREE / f64::from(per_degree);
    let mut points: Vec<[i32; 2]> =
        corners.iter().map(|corner| corner.map(|steps| (f64::from(steps) / step).round() as i32)).collect();
    points.dedup();
    points
}

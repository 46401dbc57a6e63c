#!/usr/bin/env bash
# Everything that Fellwork computes from the demo and eight other styles, in files of a folder, so that what two
# states of the program say can be compared with `diff -r`:
#
#     crates/suite/checks/outputs.sh target/debug/fellwork COLLECTION OUT
#
# COLLECTION is made where it is not there. Give the same one to both, so that both read the same files.
set -euo pipefail
fellwork=$(realpath "$1") collection=$2 out=$3
date=2026-03-01

if [ ! -e "$collection" ]; then
    "$fellwork" demo "$collection" --no-bench >/dev/null
    begin() { "$fellwork" new "$collection" "$@" >/dev/null; }
    begin --name "Teal" --figure women --fit tapered --waists 24,26,28.5 --lengths 30,32 --taste quiet
    begin --name "Breakwater" --figure men --fit relaxed --leg wide --taste topstitched --waists 30,34,40 --lengths 32
    begin --name "Lockkeeper" --fit slim --outseam shaped --waists 28,30 --lengths 34
    begin --name "Mudlark" --figure women --fit straight --taste topstitched --waists 26,30 --lengths 30
    begin --name "Ferryman Two" --from "$collection/styles/ferryman"
    begin --name "Ferryman Low" --from "$collection/styles/ferryman"
    begin --name "Ferryman Heavy" --from "$collection/styles/ferryman"
    begin --name "Ferryman Odd" --from "$collection/styles/ferryman"
    style() { echo "$collection/styles/$1/style.toml"; }
    value() { # value STYLE TABLE KEY VALUE: in place of what the style says
        sed -i "/^\[$2\]/,/^\[/ s|^$3 = [^#]*|$3 = $4 |" "$(style "$1")"
    }
    # Sewn and sized otherwise: what the rules of sewing question.
    value ferryman-two seams.inseam construction '"mock-felled"'
    value ferryman-two chart.waist tolerance '"25 cm"'
    value ferryman-two chart.inseam tolerance '"30 cm"'
    value ferryman-two chart.back_pocket_from_yoke value '"1 mm"'
    value ferryman-two pockets.bag width '"9 cm"'
    value ferryman-two pockets.bag depth '"14 cm"'
    value ferryman-two loops belt '"60 mm"'
    value ferryman-two patch from_centre '"15 cm"'
    value ferryman-two pockets.coin from_side '"6 cm"'
    sed -i 's/100 % cotton\. Made in Portugal\.//; s/text = ""/text = "wash cold"/' "$(style ferryman-two)"
    # A chart that no shape meets.
    value ferryman-low chart.front_rise value '"14 cm"'
    # Yarns too heavy, stitches too dense, a hem too narrow, rows beyond what they hold.
    sed -i -E 's/density = "8 \/in"/density = "22 \/in"/; s/density = "9 \/in"/density = "3 \/in"/; s/"night-80", under/"rope-105", under/' "$(style ferryman-heavy)"
    value ferryman-heavy chart.hem_depth value '"5 mm"'
    value ferryman-heavy chart.fly_length value '"8 cm"'
    value ferryman-heavy seams.seat construction '"overlocked"'
    value ferryman-heavy cloth shell '"oar-lining"'
    sed -i -E 's/offset = "8 mm"/offset = "21 mm"/; s/offset = "1.6 mm"/offset = "0.2 mm"/; /^lap = "left over right"/d' "$(style ferryman-heavy)"
    # Far from what jeans are: what the rules of fit question.
    value ferryman-odd chart.knee value '"32 cm"'
    value ferryman-odd chart.hem value '"26 cm"'
    value ferryman-odd chart.waist value '"38 in"'
    value ferryman-odd chart.inseam value '"88 cm"'
    value ferryman-odd chart.band_overlap value '"2 cm"'
    value ferryman-odd shape seat_angle '"22 deg"'
    value ferryman-odd shape outseam '"shaped"'
    value ferryman-odd shape band_ease '"14 mm"'
    value ferryman-odd shape inseam_stretch '"14 mm"'
    value ferryman-odd shape thigh_split '"-2 cm"'
    # Muted in the words that findings had before their subjects had codes.
    mute() { printf '\n[[muted]]\ncode = "%s"\nabout = "%s"\nreason = "as the first run was"\n' "$2" "$3" >>"$(style "$1")"; }
    mute ferryman-two sewing::patch-hangs patch
    mute ferryman-two cutting::skew "cloth tideline-14"
    mute ferryman-heavy sewing::row-near-edge "inseam, row 1"
    mute ferryman-odd fit::leg-taper "no longer found"
fi

rm -rf "$out"
mkdir -p "$out"
said() { # said FILE COMMAND…: what it prints and how it ends
    local file=$1 ended=0
    shift
    "$fellwork" "$@" >"$out/$file" 2>"$out/$file.errors" || ended=$?
    echo "$ended" >>"$out/$file.errors"
}

"$fellwork" --help >"$out/help.txt"
for command in check pieces draw pack lay patterns plan bench bring new history compare; do
    "$fellwork" "$command" --help >"$out/help-$command.txt"
done
for style in "$collection"/styles/*/; do
    name=$(basename "$style")
    mkdir -p "$out/$name"
    said "$name/check.txt" check "$style" --measures
    said "$name/check.json" check "$style" --measures --json
    said "$name/pieces.txt" pieces "$style"
    said "$name/pieces.json" pieces "$style" --json
    for view in front back; do
        for face in outside inside; do
            said "$name/$view-$face.svg" draw "$style" --view "$view" --face "$face" -o -
        done
    done
    said "$name/pack.pdf" pack "$style" --date "$date" -o -
    for kind in dxf svg hpgl; do
        said "$name/patterns-$kind.txt" patterns "$style" --kind "$kind" --date "$date" -o "$out/$name/patterns-$kind"
    done
    said "$name/history.txt" history "$style"
done
for kind in pdf roll; do
    said "ferryman/patterns-$kind.txt" patterns "$collection/styles/ferryman" --kind "$kind" --date "$date" -o "$out/ferryman/patterns-$kind"
done
said order.txt check "$collection"/orders/*.toml
said plan.txt plan "$collection"/orders/*.toml --estimate
said plan.json plan "$collection"/orders/*.toml --estimate --json
said lay.svg lay "$collection/styles/ferryman" --pairs 32x32=2 --places 2000 --seconds 600 --fresh -o -
said lay.json lay "$collection/styles/ferryman" --pairs 30x32=1 --places 2000 --seconds 600 --fresh --json

# The bench: every plate and the rooms of every style, without the names of assets, which change with the assets.
key=outputsoutputsoutputs
"$fellwork" bench "$collection" --no-open --port 0 --key "$key" >"$out/bench.log" &
bench=$!
trap 'kill "$bench"' EXIT
until grep -q http "$out/bench.log"; do sleep 0.1; done
url=$(grep -o 'http://[^ ?]*' "$out/bench.log" | head -1)
url=${url%/}
jar=$(mktemp)
curl -s -L -c "$jar" -b "$jar" "$url/?key=$key" >/dev/null
page() { # page FILE ADDRESS
    mkdir -p "$(dirname "$out/bench/$1")"
    curl -s -b "$jar" "$url$2" | sed -E 's#/asset/[^/]*/#/asset/#g; s#127.0.0.1:[0-9]+#HOST#g' >"$out/bench/$1"
}
page index.html "/"
for style in "$collection"/styles/*/; do
    name=$(basename "$style")
    for panel in fit cloth details construction yarn order findings; do
        page "$name/$panel.html" "/style/$name?panel=$panel&layers=stitches,fittings,below,measures,findings"
    done
    page "$name/back.svg" "/style/$name/drawing.svg?view=back"
done
for plate in $(grep -oE 'plate=[a-z-]+' "$out/bench/ferryman/fit.html" | cut -d= -f2 | sort -u); do
    page "ferryman/plate-$plate.svg" "/style/ferryman/drawing.svg?plate=$plate"
done
for seam in $(grep -oE 'part=seam%3[Aa][a-z_]+' "$out/bench/ferryman/construction.html" | sed 's/.*%3[Aa]//' | sort -u); do
    page "ferryman/seam-$seam.html" "/style/ferryman?panel=construction&part=seam%3A$seam"
done
for room in $(grep -oE 'href="/[a-z][^"?]*"' "$out/bench/index.html" "$out/bench/ferryman/fit.html" | cut -d'"' -f2 | grep -v asset | sort -u); do
    page "room$(echo "$room" | tr / -).html" "$room"
done
rm "$out/bench.log" "$jar"

### What the trade calls the operations of five-pocket jeans, and the machines it usually sews them on.

## Operations. Each key ends in the code of the operation

trade-edge-overedge = overedge of single edges
trade-pocket-hem = hem of coin and back pocket
trade-patch-pocket = setting of a patch pocket
trade-pocket-facing = attaching of a facing to a pocket bag
trade-pocket-bag = closing of a pocket bag, then turned and topstitched
trade-pocket-mouth = topstitching of the front pocket mouth
trade-fly = left fly and its topstitching
trade-front-rise = joining of the front rise
trade-yoke = felled yoke seam
trade-seat = felled seat seam
trade-inseam-felled = felled inseam
trade-inseam-overedged = overedged inseam, then topstitched
trade-outseam-overedged = overedged outseam, then topstitched at the hip
trade-outseam-busted = outseam pressed open
trade-waistband-folder = waistband attached through a folder
trade-waistband-topstitched = waistband attached, then topstitched
trade-waistband-ends = closing of the waistband ends
trade-hem = bottom hem
trade-belt-loop = belt-loop strip
trade-french-seam = closing of a bag with its edges enclosed
trade-binding = binding of a raw edge
trade-clean-finish = turning in of a single edge
trade-laid-on = sewing on of a patch or label
trade-bartack = bartacks, and attaching of belt loops

## Machines that are usual for one of them, where it is not one machine by its plain name

trade-machine-pocket-hem = two-needle lockstitch or chainstitch with folder
trade-machine-patch-pocket = one- or two-needle lockstitch
trade-machine-front-rise = lockstitch, then two-needle lockstitch
trade-machine-yoke = feed-off-the-arm with lap folder
trade-machine-inseam-overedged = safety overedge, then flatbed
trade-machine-outseam-overedged = safety overedge, then lockstitch
trade-machine-outseam-busted = flatbed chainstitch or lockstitch with puller
trade-machine-waistband-folder = waistband machine with folder and puller
trade-machine-hem = cylinder bed chainstitch or lockstitch with folder
trade-machine-belt-loop = two-needle coverstitch with folder
trade-machine-binding = lockstitch or chainstitch with binding folder

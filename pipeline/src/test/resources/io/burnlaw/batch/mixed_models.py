# Makes mixed_models_statsmodels.csv: REML fits of the data in mixed_models.csv by statsmodels' MixedLM.
# Run: python3 mixed_models.py   (Debian: python3-statsmodels)
import csv
import warnings

import numpy as np
from statsmodels.regression.mixed_linear_model import MixedLM

warnings.simplefilter("ignore")
rows = list(csv.DictReader(open("mixed_models.csv")))
out = [("set", "what", "value")]
for name in ("dyestuff", "dyestuffUneven", "sleep", "sleepUneven"):
    own = [r for r in rows if r["set"] == name]
    y = np.array([float(r["y"]) for r in own])
    x = np.array([float(r["x"]) for r in own])
    fixed = np.column_stack([np.ones_like(y), x]) if np.any(x != 0) else np.ones((len(y), 1))
    model = MixedLM(y, fixed, groups=np.array([r["group"] for r in own]))
    fit = model.fit(reml=True, method=["bfgs", "powell", "bfgs"], gtol=1e-10)
    out.append((name, "within", f"{fit.scale:.10g}"))
    out.append((name, "between", f"{np.asarray(fit.cov_re)[0, 0]:.10g}"))
    out.append((name, "criterion", f"{-2 * fit.llf:.12g}"))
    for k in range(fixed.shape[1]):
        out.append((name, f"beta{k}", f"{fit.fe_params[k]:.10g}"))
with open("mixed_models_statsmodels.csv", "w", newline="") as file:
    csv.writer(file, lineterminator="\n").writerows(out)

const value = (id) => document.getElementById(id).value;

document.querySelector("button").addEventListener("click", () => {
  const text = [value("site"), value("day"), value("method")].join(" | ");
  document.getElementById("said").textContent = text;
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text]));
  link.download = "said.txt";
  link.click();
});

document.getElementById("file").addEventListener("change", async (event) => {
  document.getElementById("said").textContent = await event.target.files[0].text();
});
